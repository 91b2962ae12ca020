import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CutPieces, planCuts } from '../../../src/domain/takeoff/cutting-plan.ts';
import { fewestSticks } from '../../support/fewest-sticks.ts';
import { feet } from '../../support/job.ts';

// The published instances of Chvatal and of the AMPL book stand in tests/published/values/takeoff.json.

test('twelve rods of 6.75 ft take twelve sticks of 10 ft, where their total length suggests nine', () => {
  const plan = planCuts(feet(10), [{ length: feet(6.75), count: 12 }]);
  expect(plan).toMatchObject({ sticks: 12, least: 12, proven: true, waste: 12 * feet(3.25) });
});

test('three rods of a third of the stock come out of one stick without waste', () => {
  expect(planCuts(feet(9), [{ length: feet(3), count: 3 }])).toMatchObject({ sticks: 1, waste: 0 });
});

test('a rod as long as the stock still comes out of it', () => {
  expect(planCuts(feet(10), [{ length: feet(10), count: 2 }]).sticks).toBe(2);
});

test('a rod longer than the stock cannot be planned', () => {
  expect(() => planCuts(feet(10), [{ length: feet(10) + 1, count: 1 }])).toThrow(RangeError);
});

test('no rods take no sticks', () => {
  expect(planCuts(feet(10), [])).toMatchObject({ sticks: 0, waste: 0, patterns: [], proven: true });
});

test('pieces of one length given in several lots are cut together', () => {
  const lots = [
    { length: 30, count: 1 },
    { length: 30, count: 2 },
  ];
  expect(planCuts(100, lots).sticks).toBe(1);
});

test('where filling each stick as full as it can be loses, the plan does not', () => {
  // Full sticks first: 3+3+3 leaves nothing to go with the fives, four sticks in all. One five and one three each: three.
  const plan = planCuts(9, [
    { length: 5, count: 3 },
    { length: 3, count: 3 },
  ]);
  expect(plan).toMatchObject({ sticks: 3, proven: true, waste: 3 });
  expect(plan.patterns).toEqual([
    {
      times: 3,
      pieces: [
        { length: 5, count: 1 },
        { length: 3, count: 1 },
      ],
    },
  ]);
});

test('a plan too hard to prove says so, keeps its proven least, and still cuts every rod', () => {
  // 84 rods of 84 lengths around a third of the stock: made from 28 full sticks, so 28 is the answer that it misses.
  const pieces = Array.from({ length: 28 }, (_, i) => [260 + 7 * i, 250 + 5 * ((i * 11) % 28)]).flatMap(([a, b]) => [
    { length: a!, count: 1 },
    { length: b!, count: 1 },
    { length: 1000 - a! - b!, count: 1 },
  ]);
  const plan = planCuts(1000, pieces);
  expect(plan.least).toBeLessThanOrEqual(28);
  expect(plan.sticks).toBeGreaterThanOrEqual(28);
  expect(plan.proven).toBe(plan.sticks === plan.least);
  expect(plan.patterns.reduce((sum, { times, pieces: cut }) => sum + times * lengthOf(cut), 0)).toBe(28_000);
});

const instances = fc
  .record({
    stock: fc.integer({ min: 20, max: 60 }),
    pieces: fc.array(fc.record({ length: fc.integer({ min: 5, max: 60 }), count: fc.integer({ min: 1, max: 4 }) }), {
      minLength: 2,
      maxLength: 4,
    }),
  })
  .map(({ stock, pieces }) => ({ stock, pieces: pieces.filter(({ length }) => length <= stock) }));

test('no plan buys more sticks than the least that trying everything finds', () => {
  fc.assert(
    fc.property(instances, ({ stock, pieces }) => {
      const plan = planCuts(stock, pieces);
      expect(plan.proven).toBe(true);
      expect(plan.sticks).toBe(fewestSticks(stock, pieces));
    }),
    { numRuns: 300, seed: 20 },
  );
});

test('a plan cuts exactly the pieces that were asked for, and no stick is overfilled', () => {
  fc.assert(
    fc.property(instances, ({ stock, pieces }) => {
      const plan = planCuts(stock, pieces);
      const cut = plan.patterns.flatMap((pattern) =>
        pattern.pieces.map(({ length, count }) => ({ length, count: count * pattern.times })),
      );
      expect(totals(cut)).toEqual(totals(pieces));
      for (const pattern of plan.patterns) expect(lengthOf(pattern.pieces)).toBeLessThanOrEqual(stock);
      expect(plan.waste).toBe(plan.sticks * stock - lengthOf(pieces));
    }),
    { numRuns: 300, seed: 21 },
  );
});

function totals(pieces: readonly CutPieces[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { length, count } of pieces) counts[length] = (counts[length] ?? 0) + count;
  return counts;
}

function lengthOf(pieces: readonly CutPieces[]): number {
  return pieces.reduce((sum, { length, count }) => sum + length * count, 0);
}
