import { describe, expect, test } from 'vitest';
import { UNIT_ITEMS } from '../../../src/domain/bid/bid-entries.ts';
import { ESTIMATE_CLASSES } from '../../../src/domain/bid/estimate-class.ts';
import type { Bid } from '../../../src/domain/model.ts';
import { aQuote, bidOf, quickT2 } from '../../support/bid.ts';

const job = quickT2();
const prices = {
  sections: [],
  sectionPerM: 10_000,
  cutSurcharge: null,
  jointKit: 4_000,
  elbow: null,
  tee: null,
  endFeed: 50_000,
  endCap: 2_000,
  support: 3_000,
  tap: 20_000,
  drop: 6_000,
};
const priced = { ...job, types: job.types.map((type) => ({ ...type, prices })) };
const units = (changes: Partial<Bid>, of = priced) => bidOf({ other: 0, ...changes }, of);
const want = (item: (typeof UNIT_ITEMS)[number], more = {}) => ({ item, material: null, offered: null, ...more });

describe('unit prices', () => {
  test('a tap-off: material with tax, its hours, then overhead and profit, to the cent', () => {
    const bid = units({
      taxPercent: 7,
      overheadPercent: 10,
      profit: { kind: 'margin', percent: 6 },
      unitPrices: [want('tap')],
    });
    const [tap] = bid.unitPrices?.lines ?? [];
    // By hand: 200.00 × 1.07 = 214.00 of material; (hours of handle-tap, tap and test-tap) / 960 at 332 / 3.25 an hour.
    const labour = (tap?.hours ?? 0) * (33_200 / 3.25);
    expect(tap).toMatchObject({ quantity: 960, material: 20_000 });
    expect(tap?.hours).toBeGreaterThan(0.4);
    expect(tap?.worked).toBe(Math.round(((21_400 + labour) * 1.1) / 0.94));
  });

  test('sections are priced by the foot: 48 runs of 70 ft are 3,360 ft', () => {
    const [section] = units({ unitPrices: [want('section')] }).unitPrices?.lines ?? [];
    expect(section).toMatchObject({ unit: 'ft', quantity: 3360 });
    expect(section?.material).toBeCloseTo(3_048, 6); // 100.00 a metre is 30.48 a foot
  });

  test('where every thing has a unit price, what remains is the work that belongs to none', () => {
    const all = UNIT_ITEMS.filter((item) => !['elbow', 'tee', 'fire-seal'].includes(item)).map((item) =>
      want(item, item === 'label' || item === 'slot-closure' ? { material: 0 } : {}),
    );
    const book = job.labourBook!;
    const none = new Set(['test-insulation', 'test-ground', 'torque-log', 'thermal-scan', 'test-papers', 'punch']);
    const bare = { ...priced, labourBook: { ...book, activities: book.activities.filter(({ id }) => !none.has(id)) } };
    const bid = units(
      {
        taxPercent: 7,
        wastePercent: 2,
        escalationPercent: 3,
        overheadPercent: 10,
        bond: { percent: 1, of: 'price' },
        profit: { kind: 'markup', percent: 8 },
        unitPrices: all,
      },
      bare,
    );
    const rounding = (bid.unitPrices?.lines ?? []).reduce((sum, { quantity }) => sum + quantity / 2, 0) + 20;
    expect(Math.abs(bid.unitPrices?.remainder ?? Number.NaN)).toBeLessThan(rounding);
    expect(rounding).toBeLessThan(bid.price / 5_000);
  });

  test.each([
    { firm: false, tax: 'out' as const },
    { firm: true, tax: 'out' as const },
    { firm: false, tax: 'in' as const },
    { firm: true, tax: 'in' as const },
  ])('what a quote asks more for tap-offs is in their unit price as it is in the price: %j', (terms) => {
    const withTaps = (amount: number) => {
      const quote = aQuote(
        { ...terms, chosen: true },
        { item: 'tap', amount },
        { item: 'tap', detail: 'meters', state: 'lacks', amount: amount / 10 },
      );
      const marks = { overheadPercent: 10, profit: { kind: 'margin', percent: 6 } } as const;
      return units({
        quotes: [quote],
        taxPercent: 7,
        escalationPercent: 4,
        wastePercent: 3,
        ...marks,
        unitPrices: [want('tap')],
      });
    };
    const [before, after] = [withTaps(20_000_000), withTaps(30_000_000)];
    const step =
      (after.unitPrices?.lines[0]?.worked ?? Number.NaN) - (before.unitPrices?.lines[0]?.worked ?? Number.NaN);
    expect(step).toBeGreaterThan(10_000);
    // 960 prices rounded to the cent may be 9.60 off.
    expect(Math.abs(step * 960 - (after.price - before.price))).toBeLessThan(960 + 10);
  });

  test('an offered price stands in for the worked one, and one below cost is told', () => {
    const bid = units({ unitPrices: [want('tap', { offered: 10_000 })] });
    expect(bid.unitPrices?.lines[0]).toMatchObject({ offered: 10_000, extended: 9_600_000 });
    expect(bid.unitPrices?.remainder).toBe(bid.price - 9_600_000);
    expect(bid.checks[0]?.message).toMatch(/offered for tap-offs is below their own cost before overhead: raise it/);
  });
});

describe('alternates', () => {
  const marks = {
    materials: 1_000_000,
    taxPercent: 7,
    overheadPercent: 10,
    profit: { kind: 'markup', percent: 6 },
  } as const;
  const alternate = {
    name: 'A',
    kind: 'add',
    materials: 100_000,
    hours: null,
    subcontracts: null,
    other: null,
    note: null,
  } as const;

  test('1,000.00 of material with 7 % tax, 10 % overhead and 6 % markup is 1,247.62, added or deducted', () => {
    const amounts = (kind: 'add' | 'deduct') =>
      bidOf({ ...marks, alternates: [{ ...alternate, kind }] }).alternates[0]?.amount;
    expect(amounts('add')).toBe(124_762);
    expect(amounts('deduct')).toBe(-124_762);
  });

  test('an alternate changes nothing of the price, and doubling all of the material doubles what it adds', () => {
    const bid = bidOf({ ...marks, alternates: [{ ...alternate, materials: 1_000_000 }] });
    expect(bid.price).toBe(bidOf(marks).price);
    expect(bid.alternates[0]?.amount).toBe(bid.price); // the bid is that material alone
  });

  test('hours are at the cost of a productive one: 10 h at 332 / 3.25', () => {
    const bid = bidOf({ materials: 1, other: 0, alternates: [{ ...alternate, materials: null, hours: 10 }] }, job);
    expect(bid.alternates[0]?.lines.map(({ line, amount }) => [line, amount])).toEqual([['labour', 102_154]]);
  });
});

// AACE International 56R-08, table 1, from memory: the classes as the practice prints them for buildings.
test.each([
  [5, [-30, -20], [30, 50]],
  [4, [-20, -10], [20, 30]],
  [3, [-15, -5], [10, 20]],
  [2, [-10, -5], [5, 15]],
  [1, [-5, -3], [3, 10]],
] as const)('an estimate of class %d usually misses by %j below and %j above', (of, low, high) => {
  expect(ESTIMATE_CLASSES[of]).toMatchObject({ low, high });
});
