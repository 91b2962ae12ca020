import { describe, expect, test } from 'vitest';
import {
  aBranch,
  aJob,
  aRun,
  aTap,
  aType,
  type JsonObject,
  jobOf,
  leg,
  type Printed,
  printed,
  quantityOf,
} from './job-text.ts';

const linesOf = ({ takeoff }: Printed, item: string) => takeoff.filter((line) => line.item === item);
const ROOMY = { maxSpacingMm: 3000, maxEndOverhangMm: 600, jointClearMm: 0, stepMm: 50, fittingWithinMm: 10_000 };

describe('sections and fittings', () => {
  test('sections by kind and length, "kind on sections"', () => {
    const type = aType({ factoryCut: { minMm: 500, maxMm: 1400, stepMm: 100 } });
    expect(linesOf(printed(jobOf(type, aRun({ legs: [leg(8500)] }))), 'section')).toEqual([
      { item: 'section', kind: 'stock', lengthMm: 3000, run: 'R', level: 'F1', quantity: 2, unit: 'each' },
      { item: 'section', kind: 'stock', lengthMm: 1500, run: 'R', level: 'F1', quantity: 1, unit: 'each' },
      { item: 'section', kind: 'cut', lengthMm: 1000, run: 'R', level: 'F1', quantity: 1, unit: 'each' },
    ]);
  });
  test('elbows and tees by hand, a tee in its parent run', () => {
    const figures = printed(
      jobOf(
        aType(),
        aRun({ id: 'P', legs: [leg(3300, 'left'), leg(3600, 'right'), leg(3600, 'left'), leg(6900)] }),
        aBranch('B', 'P', 3300 + 3600 + 3600 + 3600, 'right', { legs: [leg(3300)] }),
      ),
    );
    expect(linesOf(figures, 'elbow')).toMatchObject([
      { hand: 'inside', quantity: 2, run: 'P' },
      { hand: 'outside', quantity: 1, run: 'P' },
    ]);
    expect(linesOf(figures, 'tee')).toMatchObject([{ hand: 'far-left', quantity: 1, run: 'P' }]);
  });
  test('"handed": false: one line, without a hand', () => {
    const type = aType({ fittings: { elbow: { legMm: 300, weightKg: 0, handed: false } } });
    const [line, ...more] = linesOf(
      printed(jobOf(type, aRun({ legs: [leg(3300, 'left'), leg(3600, 'right'), leg(3300)] }))),
      'elbow',
    );
    expect(more).toEqual([]);
    expect(line).toEqual({ item: 'elbow', run: 'R', level: 'F1', quantity: 2, unit: 'each' });
  });
});

describe('"Clamps counted each"; the feed joint "counted in clamps, contact sets and joint hours"', () => {
  const counts = (type: JsonObject, ...runs: JsonObject[]) => {
    const figures = printed(jobOf(aType(type), ...runs));
    return ['clamp', 'contact-set', 'bolt'].map((item) => quantityOf(figures, item));
  };
  test('one joint: 2 clamps, 1 contact set, 2 bolts by default', () => {
    expect(counts({}, aRun())).toEqual([2, 1, 2]);
  });
  test("the sheet's own numbers, nought among them", () => {
    expect(counts({ joint: { clamps: 3, contactSets: 2, bolts: 0 } }, aRun())).toEqual([3, 2, 0]);
  });
  test('with a feed that joins one more; a centre feed that joins two more than none at all', () => {
    const joins = { feed: { joins: true, weightKg: 0 } };
    expect(counts(joins, aRun())).toEqual([4, 2, 4]);
    expect(counts(joins, aRun({ feed: { kind: 'centre', atMm: 3000 } }))).toEqual([4, 2, 4]);
  });
  test('a branch owns the joint at its own 0, whether feeds join or not', () => {
    const runs = [aRun({ id: 'P', legs: [leg(6600)] }), aBranch('B', 'P', 3300, 'left', { legs: [leg(3300)] })];
    // P: both faces of the tee; B: the arm's face.
    expect(counts({}, ...runs)).toEqual([6, 3, 6]);
    expect(counts({ feed: { joins: true, weightKg: 0 } }, ...runs)).toEqual([8, 4, 8]);
  });
});

describe('ends: every open end has a cap, every fed one a feed', () => {
  const ends = (run: JsonObject, ...more: JsonObject[]) => {
    const figures = printed(jobOf(aType(), aRun(run), ...more));
    return ['end-feed', 'end-cap'].map((item) => quantityOf(figures, item));
  };
  test('fed at the end 1 and 1, in the middle 1 and 2', () => {
    expect(ends({})).toEqual([1, 1]);
    expect(ends({ feed: { kind: 'centre', atMm: 3000 } })).toEqual([1, 2]);
  });
  test('a branch has a cap of its own and no feed', () => {
    expect(ends({ legs: [leg(6600)] }, aBranch('B', 'R', 3300, 'left', { legs: [leg(3300)] }))).toEqual([1, 2]);
  });
});

test('slot closure is the straight slot less the boxes of the taps', () => {
  const type = aType({ tap: { jointClearMm: 0, endClearMm: 0, minSpacingMm: 0, boxLengthMm: 300 } });
  const run = aRun({ legs: [leg(3300, 'left'), leg(3300)], taps: [aTap('A', 1000), aTap('B', 2000)] });
  expect(linesOf(printed(jobOf(type, run)), 'slot-closure')).toMatchObject([{ quantity: 5.4, unit: 'm' }]);
});

describe('supports, rods and rod stock: "dropMm of a run is the rod length to buy per support"', () => {
  const hung = (changes: JsonObject) => aRun({ rod: 'M10', attachment: 'anchor', ...changes });
  test('three supports, three rods of the drop, three anchors', () => {
    const figures = printed(jobOf(aType(), hung({ dropMm: 900 })));
    expect(linesOf(figures, 'support')).toMatchObject([{ quantity: 3, run: 'R', unit: 'each' }]);
    expect(linesOf(figures, 'rod')).toMatchObject([{ quantity: 3, lengthMm: 900, run: 'R' }]);
    expect(linesOf(figures, 'anchor')).toMatchObject([{ quantity: 3 }]);
    expect(quantityOf(figures, 'nut') % 3).toBe(0);
  });
  test('rod stock is bought for the project, "run null": 3 x 900 from 3048', () => {
    const [line, ...more] = linesOf(printed(jobOf(aType(), hung({ dropMm: 900 }))), 'rod-stock');
    expect(more).toEqual([]);
    expect(line).toMatchObject({ run: null, level: null, lengthMm: 3048, quantity: 1 });
  });
  test('by a cutting plan, not by the sum: 12 rods of 6.75 ft take 12 sticks of 10 ft', () => {
    const type = aType({ stockLengthsMm: [34_200], support: { ...ROOMY } });
    const run = hung({ legs: [leg(34_200)], dropMm: 2057.4 });
    const figures = printed(jobOf(type, run));
    expect(quantityOf(figures, 'support')).toBe(12);
    expect(quantityOf(figures, 'rod-stock')).toBe(12);
  });
  test('rods of several runs share sticks of one diameter and stock: 3 x 1800 and 3 x 1200 from 3000', () => {
    const figures = printed(
      jobOf(aType(), hung({ dropMm: 1800, rodStockMm: 3000 }), hung({ id: 'S', dropMm: 1200, rodStockMm: 3000 })),
    );
    expect(linesOf(figures, 'rod-stock')).toMatchObject([{ quantity: 3 }]);
  });
  test('diameters and stock lengths are bought apart', () => {
    const figures = printed(
      jobOf(
        aType(),
        hung({ dropMm: 900 }),
        hung({ id: 'S', dropMm: 900, rod: 'M12' }),
        hung({ id: 'U', dropMm: 900, rodStockMm: 2000 }),
      ),
    );
    expect(linesOf(figures, 'rod-stock').map((line) => [line.kind, line.lengthMm, line.quantity])).toEqual([
      ['M10', 3048, 1],
      ['M12', 3048, 1],
      ['M10', 2000, 2],
    ]);
  });
  // 4 x 1500, 4 x 1000, 4 x 500 from 3000: 12 000 in all, and 4 sticks do (1500 + 1000 + 500).
  test('a plan that first-fit by length would miss is found', () => {
    const one = (id: string, dropMm: number) => hung({ id, dropMm, rodStockMm: 3000, legs: [leg(9000)], type: 'W' });
    const type = aType({ id: 'W', stockLengthsMm: [9000], support: ROOMY });
    const figures = printed(aJob({ buswayTypes: [type], runs: [one('A', 1500), one('B', 1000), one('C', 500)] }));
    expect(quantityOf(figures, 'support')).toBe(12);
    expect(quantityOf(figures, 'rod-stock')).toBe(4);
  });
  test('a run without a drop buys no rod stock and says so', () => {
    const figures = printed(jobOf(aType(), hung({})));
    expect(linesOf(figures, 'rod-stock')).toEqual([]);
    expect(figures.checks.some(({ message }) => message.includes('rod'))).toBe(true);
  });
});

describe('seals, taps, drops, labels', () => {
  test('a fire wall takes a seal of its rating, a plain wall none', () => {
    const crossing = (atMm: number, kind: string, fireRatingMin?: number) => ({
      atMm,
      thicknessMm: 100,
      kind,
      ...(fireRatingMin !== undefined && { fireRatingMin }),
    });
    const run = aRun({
      crossings: [crossing(1000, 'wall'), crossing(2000, 'fire-wall', 120), crossing(4000, 'fire-wall', 120)],
    });
    expect(linesOf(printed(jobOf(aType(), run)), 'fire-seal')).toMatchObject([{ quantity: 2, run: 'R' }]);
  });
  test('taps by kind and drops by length', () => {
    const taps = [
      aTap('A', 500, { dropMm: 1200 }),
      aTap('B', 1000, { dropMm: 1200 }),
      aTap('C', 2000, { phases: 'L1-L2-L3', deviceA: 32, dropMm: 2000 }),
      aTap('D', 2500),
    ];
    const figures = printed(jobOf(aType(), aRun({ taps })));
    expect(
      linesOf(figures, 'tap')
        .map(({ quantity }) => quantity)
        .sort(),
    ).toEqual([1, 3]);
    expect(
      linesOf(figures, 'drop')
        .map((line) => [line.lengthMm, line.quantity])
        .sort(),
    ).toEqual([
      [1200, 2],
      [2000, 1],
    ]);
  });
  test('the standard run of scenario T2 has 24 labels: 20 taps and its 4 joints', () => {
    const taps = Array.from({ length: 20 }, (_, i) => aTap(`T${i}`, 100 + 100 * i));
    const type = aType({ feed: { joins: true, weightKg: 0 }, stockLengthsMm: [3000, 1500] });
    expect(quantityOf(printed(jobOf(type, aRun({ legs: [leg(10_500)], taps }))), 'label')).toBe(24);
  });
});

test('extras stand at the end, marked, with their quantity, unit and level', () => {
  const extras = [
    { item: 'Hookstick', level: 'F1', quantity: 2, unit: 'each', price: 100 },
    { item: 'Crane day', quantity: 1.5, unit: 'day' },
  ];
  const lines = printed({ ...aJob(), extras }).takeoff.slice(-2);
  expect(lines).toMatchObject([
    { item: 'extra', kind: 'Hookstick', run: null, level: 'F1', quantity: 2, unit: 'each' },
    { item: 'extra', kind: 'Crane day', run: null, level: null, quantity: 1.5, unit: 'day' },
  ]);
});
