import { describe, expect, test } from 'vitest';
import { toModel } from '../../../src/document/to-model.ts';
import { profitOn } from '../../../src/domain/bid/profit.ts';
import { figures } from '../../../src/domain/figures.ts';
import type { Bid, BuswayType, Job } from '../../../src/domain/model.ts';
import { scenarioT2 } from '../../support/scenarios.ts';

// The worked bid T2 prints whole dollars: material 1,263,100, 7 % tax 88,417, labour 247,618, other 112,300, supervision
// 72,320, cost 1,783,755, with 10 % overhead 1,962,131, with 6 % markup 2,079,859 or 6 % margin 2,087,373.
const whole = (minor: number | undefined) => Math.round((minor ?? Number.NaN) / 100);

function bidOf(changes: Partial<Bid> = {}, change: (job: Job) => Job = (job) => job) {
  const job = toModel(scenarioT2());
  if (job.bid === null) throw new Error('the scenario has a bid');
  const { bid } = figures(change({ ...job, bid: { ...job.bid, ...changes } }));
  if (bid === null) throw new Error('no bid came out');
  const amount = (name: string) => bid.lines.find(({ line }) => line === name)?.amount;
  return { ...bid, amount };
}

describe('the worked bid', () => {
  const none = { contingencyP: null };

  test('material, tax, labour, other and supervision make the printed cost', () => {
    const bid = bidOf(none);
    expect(whole(bid.amount('materials'))).toBe(1_263_100);
    expect(whole(bid.amount('tax'))).toBe(88_417);
    expect(whole(bid.amount('labour'))).toBe(247_618);
    expect(whole(bid.cost)).toBe(1_783_755);
    expect(whole(bid.cost + (bid.amount('overhead') ?? 0))).toBe(1_962_131);
  });

  test('6 % markup and 6 % margin give the two printed prices', () => {
    expect(whole(bidOf({ ...none, profit: { kind: 'markup', percent: 6 } }).price)).toBe(2_079_859);
    expect(whole(bidOf({ ...none, profit: { kind: 'margin', percent: 6 } }).price)).toBe(2_087_373);
  });

  test('quoted material, other cost, a crew and a sound layout leave nothing to be named as missing', () => {
    expect(bidOf(none).incomplete).toEqual([]);
  });
});

test.each([null, 50, 80, 90, 99])(
  'the lines sum to the price to the minor unit, contingency at P %s',
  (contingencyP) => {
    const bid = bidOf({ contingencyP });
    expect(bid.lines.reduce((sum, { amount }) => sum + amount, 0)).toBe(bid.price);
    expect(bid.lines.every(({ amount }) => Number.isSafeInteger(amount))).toBe(true);
  },
);

test('contingency is the step from P50 to the chosen P at the cost of an hour: none at P50, less at P80 than at P90', () => {
  const step = (p: number) => bidOf({ contingencyP: p }).amount('contingency') ?? Number.NaN;
  expect(step(50)).toBe(0);
  expect(step(80)).toBeGreaterThan(0);
  expect(step(90)).toBeGreaterThan(step(80));
  const { labour } = figures(toModel(scenarioT2()));
  if (labour === null) throw new Error('the scenario has a labour book');
  expect(step(80)).toBe(Math.round((labour.range.p80 - labour.range.p50) * (labour.costPerProductiveHour ?? 0)));
});

describe('markup and margin', () => {
  // A contractors' finance article's table of markup against margin, to a tenth (67 % is printed as 40; it is 40.12).
  test.each([
    [10, 9.1],
    [15, 13],
    [20, 16.7],
    [25, 20],
    [30, 23.1],
    [35, 25.9],
    [40, 28.6],
    [50, 33.3],
    [100, 50],
  ])('a markup of %d %% is a margin of %d %%', (markup, margin) => {
    const { marginPercent } = profitOn(100, { kind: 'markup', percent: markup });
    expect(Math.abs(marginPercent - margin)).toBeLessThanOrEqual(0.05);
    expect(profitOn(100, { kind: 'margin', percent: marginPercent }).markupPercent).toBeCloseTo(markup, 9);
  });

  test('a margin of 100 % is a fault, not a price without end', () => {
    expect(() => profitOn(100, { kind: 'margin', percent: 100 })).toThrow(RangeError);
  });
});

describe('the takeoff at its prices', () => {
  const priced: BuswayType['prices'] = {
    sections: [],
    sectionPerM: 10_000,
    cutSurcharge: 5_000,
    jointKit: 4_000,
    elbow: 30_000,
    tee: 40_000,
    endFeed: 50_000,
    endCap: 2_000,
    support: 3_000,
    tap: 20_000,
    drop: 6_000,
  };
  const withPrices = (prices: BuswayType['prices']) => (job: Job) => ({
    ...job,
    types: job.types.map((type) => ({ ...type, prices })),
  });
  const open = { materials: null, contingencyP: null };

  test('48 runs of 70 ft: sections by the metre, and joints, hangers, feeds, caps, tap-offs and cords by the piece', () => {
    const bid = bidOf(open, withPrices(priced));
    // 20 ft is 6.096 m at 100.00 = 609.60, 10 ft 304.80; by hand from the standard run's counts.
    const run = 3 * 60_960 + 30_480 + 4 * 4_000 + 8 * 3_000 + 50_000 + 2_000 + 20 * 20_000 + 20 * 6_000;
    expect(bid.amount('materials')).toBe(48 * run);
    expect(bid.incomplete).toEqual([]);
  });

  test('a price that nobody gave is named and not counted as nought without a word', () => {
    const bid = bidOf(open, withPrices({ ...priced, tap: null }));
    expect(bid.incomplete).toEqual([expect.stringMatching(/^No price for 960 × tap-off of .*enter it/)]);
    expect(bid.materials.find(({ item }) => item === 'tap-off')).toMatchObject({ price: null, amount: null });
  });

  test('labels and slot closure have no price in a type: without other cost they are named', () => {
    const bid = bidOf({ ...open, other: null }, withPrices(priced));
    expect(bid.incomplete).toEqual([expect.stringContaining('label, slot-closure')]);
  });
});

test('without a labour book or a crew the bid says that it holds no labour', () => {
  const none = bidOf({}, (job) => ({ ...job, labourBook: null }));
  expect(none.amount('labour')).toBeUndefined();
  expect(none.incomplete).toEqual([expect.stringContaining('No labour book')]);
  const idle = bidOf({}, (job) => ({ ...job, labourBook: job.labourBook && { ...job.labourBook, crew: [] } }));
  expect(idle.incomplete).toEqual([expect.stringContaining('no crew')]);
});

test('a hand-made line with a price stands apart, one with neither price nor hours is named', () => {
  const extra = { item: 'Crane day', level: null, quantity: 2, unit: 'day', price: 150_000, hours: null, note: null };
  const bid = bidOf({}, (job) => ({ ...job, extras: [extra, { ...extra, item: 'Something', price: null }] }));
  expect(bid.amount('extras')).toBe(300_000);
  expect(bid.incomplete).toEqual([expect.stringContaining('"Something"')]);
});

test('runs whose sections cannot be laid are named, since they are not in the price', () => {
  const bid = bidOf({}, (job) => ({
    ...job,
    runs: job.runs.map((run, i) => (i === 0 ? { ...run, legs: run.legs.map((leg) => ({ ...leg, length: 1 })) } : run)),
  }));
  expect(bid.incomplete).toEqual([expect.stringContaining('F1-R01')]);
});
