import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { markFactor, markLines } from '../../../src/domain/bid/marks.ts';
import { figures } from '../../../src/domain/figures.ts';
import type { Bid } from '../../../src/domain/model.ts';
import { aBid, amountsOf, aQuote, bidOf, quickT2 } from '../../support/bid.ts';

describe('a small bid worked by hand', () => {
  // Every figure by hand, in cents. Material 100,000.00; waste 3 % = 3,000.00; escalation 4 % of 103,000.00 = 4,120.00;
  // freight 2,500.00; two lifts for six weeks at 400.00 and 350.00 once = 5,150.00; testing 8,000.00; other 1,000.00;
  // supervision 5,000.00 and ten weeks at 1,500.00 = 20,000.00; permit 750.00; state tax 6 % of 107,120.00 = 6,427.20;
  // county tax 1 % of 5,150.00 and 2,500.00 = 76.50.
  const bid = bidOf({
    materials: 10_000_000,
    wastePercent: 3,
    escalationPercent: 4,
    freight: 250_000,
    timed: [
      { item: 'Scissor lift', goesTo: 'equipment', number: 2, time: 6, per: 'week', rate: 40_000, once: 35_000 },
      { item: 'General foreman', goesTo: 'supervision', number: 1, time: 10, per: 'week', rate: 150_000, once: null },
    ],
    subcontracts: [{ item: 'Invented Testing', work: 'testing', amount: 800_000 }],
    other: 100_000,
    supervision: 500_000,
    permit: 75_000,
    taxes: [
      { name: 'State', percent: 6, on: ['materials'] },
      { name: 'County', percent: 1, on: ['equipment', 'freight'] },
    ],
    overheadPercent: 10,
    bond: { percent: 1.2, of: 'price' },
    profit: { kind: 'margin', percent: 6 },
  });

  test('every line is the one worked by hand, and they make the cost', () => {
    expect(amountsOf(bid)).toEqual({
      materials: 10_000_000,
      waste: 300_000,
      escalation: 412_000,
      freight: 250_000,
      equipment: 515_000,
      subcontracts: 800_000,
      other: 100_000,
      supervision: 2_000_000,
      permit: 75_000,
      State: 642_720,
      County: 7_650,
      overhead: 1_510_237,
      bond: 214_818,
      profit: 1_074_091,
    });
    expect(bid.cost).toBe(15_102_370);
  });

  test('166,126.07 of cost and overhead, 1.2 % bond and 6 % margin of the price: 166,126.07 / 0.928 = 179,015.16', () => {
    expect(bid.price).toBe(17_901_516);
    expect(bid.price * 0.012).toBeCloseTo(214_818, 0);
    expect(bid.price * 0.06).toBeCloseTo(1_074_091, 0);
  });

  test('each percentage names what it was taken of', () => {
    const working = (name: string) => bid.lines.find(({ line, label }) => (label ?? line) === name)?.working;
    expect(working('escalation')).toMatchObject({ percent: 4, of: 10_300_000, on: ['materials', 'waste'] });
    expect(working('State')).toMatchObject({ percent: 6, of: 10_712_000, on: ['materials', 'waste', 'escalation'] });
    expect(working('County')).toMatchObject({ of: 765_000, on: ['equipment', 'freight'] });
    expect(working('supervision')).toMatchObject({
      parts: [
        { name: 'entered', amount: 500_000 },
        { name: 'General foreman', amount: 1_500_000 },
      ],
    });
  });
});

test('consumables are a sum or a percentage of the labour', () => {
  const job = quickT2();
  const entries = { materials: 126_310_000, other: 0 };
  const labour = amountsOf(bidOf(entries, job)).labour ?? Number.NaN;
  expect(amountsOf(bidOf({ ...entries, consumablesPercent: 2.5 }, job)).consumables).toBe(Math.round(labour * 0.025));
  expect(amountsOf(bidOf({ ...entries, consumables: 12_345 }, job)).consumables).toBe(12_345);
});

test('a bond on cost is on cost and overhead: 2 % of 110.00 is 2.20, a 10 % markup on both 11.22', () => {
  const lines = markLines(
    { overheadPercent: 10, bond: { percent: 2, of: 'cost' }, profit: { kind: 'markup', percent: 10 } },
    10_000,
  );
  expect(lines.map(({ line, amount }) => [line, amount])).toEqual([
    ['overhead', 1_000],
    ['bond', 220],
    ['profit', 1_122],
  ]);
});

const percent = (max: number) => fc.integer({ min: 0, max: max * 100 }).map((hundredths) => hundredths / 100);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
const scale = fc.array(fc.record({ amount: fc.integer({ min: 1, max: 400_000_000 }), percent: percent(5) }), {
  minLength: 1,
  maxLength: 4,
});
const bond = fc.record({
  percent: percent(5),
  of: fc.constantFrom('price' as const, 'cost' as const),
  scale: fc.option(scale, { nil: undefined }),
});
const cents = fc.integer({ min: 0, max: 1_000_000_000 });
const profit = fc.record({ kind: fc.constantFrom('markup' as const, 'margin' as const), percent: percent(60) });
const marks = fc.record({
  overheadPercent: maybe(percent(40)),
  bond: maybe(bond),
  profit: maybe(profit),
});

/** Step by step from the bottom up, as a surety's sheet is read. */
function premium({ percent: above, scale: steps = [] }: NonNullable<Bid['bond']>, base: number): number {
  let left = base;
  let sum = 0;
  for (const { amount, percent: own } of steps) {
    sum += (Math.min(left, amount) * own) / 100;
    left -= Math.min(left, amount);
  }
  return sum + (left * above) / 100;
}

describe('a bond by a scale: 2.5 % of the first 100,000, 1.5 % of the next 400,000, 1 % above', () => {
  const bond = { percent: 1, scale: [step(10_000_000, 2.5), step(40_000_000, 1.5)] };
  const onPrice = { ...bond, of: 'price' as const };
  const margin = { kind: 'margin' as const, percent: 6 };

  function step(amount: number, percent: number) {
    return { amount, percent };
  }
  const marked = (cost: number) =>
    markLines({ overheadPercent: null, bond: onPrice, profit: margin }, cost).map(({ line, amount }) => [line, amount]);

  test('on a cost of 600,000: 2,500 and 6,000 and 1,000 are 9,500', () => {
    const lines = markLines({ overheadPercent: null, bond: { ...bond, of: 'cost' }, profit: null }, 60_000_000);
    expect(lines.map(({ amount }) => amount)).toEqual([950_000]);
    expect(lines[0]?.working).toMatchObject({
      of: 60_000_000,
      scale: {
        steps: [
          { of: 10_000_000, percent: 2.5 },
          { of: 40_000_000, percent: 1.5 },
          { of: 10_000_000, percent: 1 },
        ],
      },
    });
  });

  test('on the price that holds it: a price of 600,000 holds 9,500 of bond and 36,000 of a 6 % margin, so it costs 554,500', () => {
    expect(marked(55_450_000)).toEqual([
      ['bond', 950_000],
      ['profit', 3_600_000],
    ]);
  });

  test('at the very edge of a step, and within the first one', () => {
    // 500,000 holds 2,500 + 6,000 and 30,000; 40,000 holds 1,000 and 2,400.
    expect(marked(46_150_000)).toEqual([
      ['bond', 850_000],
      ['profit', 3_000_000],
    ]);
    expect(marked(3_660_000)).toEqual([
      ['bond', 100_000],
      ['profit', 240_000],
    ]);
  });

  test('an alternate bears what it changes of the bond; unit prices bear an even share, and the remainder closes the price', () => {
    const alternate = (name: string, kind: 'add' | 'deduct', other: number) => ({
      ...{ name, kind, other, materials: null, hours: null, subcontracts: null, note: null },
    });
    const bid = bidOf({
      materials: 55_450_000,
      bond: onPrice,
      profit: margin,
      // To 500,000 within the last step; to 50,000 (bond 1,250, margin 3,000, cost 45,750) over two; to 700,000.
      alternates: [
        alternate('less', 'deduct', 9_300_000),
        alternate('much less', 'deduct', 50_875_000),
        alternate('more', 'add', 9_300_000),
      ],
    });
    expect(bid.price).toBe(60_000_000);
    expect(bid.alternates.map(({ amount }) => amount)).toEqual([-10_000_000, -55_000_000, 10_000_000]);
    expect(markFactor({ overheadPercent: null, bond: onPrice, profit: margin }, 55_450_000)).toBeCloseTo(
      600 / 554.5,
      9,
    );
  });
});

test('overhead, bond and profit by turns, each taken of the price so far, end at the price that is worked at once', () => {
  fc.assert(
    fc.property(marks, fc.integer({ min: 100_000, max: 1_000_000_000 }), (of, cost) => {
      // Written without the formula: the price is guessed, and bond and profit are taken of it until it stands still.
      const withOverhead = cost * (1 + (of.overheadPercent ?? 0) / 100);
      let price = withOverhead;
      for (let turn = 0; turn < 400; turn += 1) {
        const bond = of.bond === null ? 0 : premium(of.bond, of.bond.of === 'price' ? price : withOverhead);
        const share = (of.profit?.percent ?? 0) / 100;
        const earned = of.profit?.kind === 'margin' ? share * price : share * (withOverhead + bond);
        price = withOverhead + bond + earned;
      }
      expect(cost * markFactor(of, cost)).toBeCloseTo(price, 0);
      const sum = cost + markLines(of, cost).reduce((total, { amount }) => total + amount, 0);
      expect(Math.abs(sum - price)).toBeLessThan(6);
    }),
  );
});

const entries: fc.Arbitrary<Partial<Bid>> = fc.record({
  materials: maybe(cents),
  wastePercent: maybe(percent(20)),
  escalationPercent: maybe(percent(20)),
  freight: maybe(cents),
  consumablesPercent: maybe(percent(10)),
  permit: maybe(cents),
  other: maybe(cents),
  supervision: maybe(cents),
  overheadPercent: maybe(percent(40)),
  profit: maybe(profit),
  bond: maybe(bond),
  contingencyP: maybe(fc.constantFrom(50, 80, 90)),
  taxes: fc.array(
    fc.record({
      name: fc.string(),
      percent: percent(20),
      on: fc.uniqueArray(fc.constantFrom('materials', 'freight', 'equipment', 'subcontracts', 'labour'), {
        minLength: 1,
      }),
    }),
    { maxLength: 3 },
  ),
  timed: fc.array(
    fc.record({
      item: fc.string(),
      goesTo: fc.constantFrom('equipment' as const, 'supervision' as const),
      number: fc.integer({ min: 1, max: 9 }),
      time: percent(50),
      per: fc.constant('week' as const),
      rate: maybe(cents),
      once: maybe(cents),
    }),
    { maxLength: 3 },
  ),
  subcontracts: fc.array(fc.record({ item: fc.string(), work: fc.constant('other' as const), amount: maybe(cents) }), {
    maxLength: 3,
  }),
  quotes: fc
    .array(
      fc.record({
        goesTo: fc.constantFrom('materials' as const, 'subcontracts' as const),
        tax: fc.constantFrom('in' as const, 'out' as const),
        freight: fc.constantFrom('in' as const, 'out' as const),
        freightAmount: maybe(cents),
        firm: fc.boolean(),
        chosen: fc.boolean(),
        amount: cents,
      }),
      { maxLength: 3 },
    )
    .map((all) =>
      all.map(({ amount, ...quote }, i) =>
        aQuote({ ...quote, id: `Q${i}`, package: `P${i}` }, { item: 'tap', amount }),
      ),
    ),
  unitPrices: fc.uniqueArray(
    fc.record({
      item: fc.constantFrom('tap', 'drop', 'section', 'support', 'label'),
      material: maybe(cents),
      offered: maybe(cents),
    }),
    { selector: ({ item }) => item },
  ),
}) as fc.Arbitrary<Partial<Bid>>;

describe('whatever is entered', () => {
  const job = quickT2();
  const small = job;
  const { layouts } = figures(small);
  const worked = (changes: Partial<Bid>) => figures({ ...small, bid: aBid(changes) }, layouts).bid!;

  test('lines are whole minor units and sum to the price, parts sum to their line, unit prices and remainder to the price', () => {
    fc.assert(
      fc.property(entries, (changes) => {
        const bid = worked(changes);
        expect(bid.lines.every(({ amount }) => Number.isSafeInteger(amount))).toBe(true);
        expect(bid.lines.reduce((sum, { amount }) => sum + amount, 0)).toBe(bid.price);
        for (const { amount, working } of bid.lines) {
          if (working.kind !== 'parts' && working.kind !== 'quoted') continue;
          const own = working.kind === 'quoted' ? working.takeoff : 0;
          expect(working.parts.reduce((sum, part) => sum + part.amount, own)).toBe(amount);
        }
        const extended = (bid.unitPrices?.lines ?? []).reduce((sum, line) => sum + (line.extended ?? 0), 0);
        if (bid.unitPrices !== null) expect(extended + bid.unitPrices.remainder).toBe(bid.price);
      }),
      { numRuns: 40 },
    );
  });

  test('levels that are split in two, conditions kept, change nothing of the price', () => {
    const split = {
      ...small,
      levels: small.levels.flatMap((level) => [level, { ...level, id: `${level.id}b`, order: level.order + 0.5 }]),
      runs: small.runs.map((run) => (Number(run.id.slice(-2)) > 6 ? { ...run, level: `${run.level}b` } : run)),
    };
    const changes = {
      materials: 126_310_000,
      taxPercent: 7,
      other: 11_230_000,
      consumablesPercent: 2,
      overheadPercent: 10,
      bond: { percent: 1, of: 'price' as const },
      profit: { kind: 'margin' as const, percent: 6 },
    };
    const whole = figures({ ...small, bid: aBid(changes) }, layouts).bid;
    const parted = figures({ ...split, bid: aBid(changes) }, layouts).bid;
    expect(parted).toEqual(whole);
  });
});
