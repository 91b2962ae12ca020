import fc from 'fast-check';
import jStat from 'jstat';
import { expect, test } from 'vitest';
import { pertBetaVariance, pertMean, pertShape } from '../../../src/domain/labour/pert.ts';
import { quantileTable, readTable } from '../../../src/domain/labour/quantile-table.ts';

const modes = Array.from({ length: 21 }, (_, i) => i / 20);
const deviates = Array.from({ length: 1001 }, (_, i) => -5.5 + (11 * i) / 1000);

test('between its nodes the table stays within 1e-4 of the library, whatever the mode', () => {
  const worst = modes.flatMap((likely) => {
    const table = quantileTable({ low: 0, likely, high: 1 }, new Map());
    return deviates.map((deviate) => {
      const exact = jStat.beta.inv(jStat.normal.cdf(deviate, 0, 1), 1 + 4 * likely, 5 - 4 * likely);
      return Math.abs(readTable(table, deviate) - exact);
    });
  });
  expect(Math.max(...worst)).toBeLessThan(1e-4);
});

test('with the mode at one end the quantile is 1 - (1 - p)^(1/5), worked by hand', () => {
  // alpha 1, beta 5: the distribution function is 1 - (1 - x)^5. At the normal deviate 0, p is a half.
  const table = quantileTable({ low: 2, likely: 2, high: 4 }, new Map());
  expect(readTable(table, 0)).toBeCloseTo(2 + 2 * (1 - 0.5 ** (1 / 5)), 6);
});

test('a table runs from low to high and never falls', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (likely) => {
      const table = quantileTable({ low: 0, likely, high: 1 }, new Map());
      expect([...table].sort((a, b) => a - b)).toEqual([...table]);
      expect(readTable(table, -50)).toBe(table[0]);
      expect(readTable(table, 50)).toBe(table.at(-1));
    }),
    { seed: 5, numRuns: 30 },
  );
});

test('equal shapes are worked out once, and each estimate keeps its own limits', () => {
  const shapes = new Map<number, Float64Array>();
  const first = quantileTable({ low: 0, likely: 1, high: 4 }, shapes);
  const second = quantileTable({ low: 10, likely: 12, high: 18 }, shapes);
  expect(shapes.size).toBe(1);
  expect(readTable(second, 0.7)).toBeCloseTo(10 + 2 * readTable(first, 0.7), 12);
});

test('a constant has no shape, and its table is the constant', () => {
  expect(pertShape({ low: 3, likely: 3, high: 3 })).toBeNull();
  expect(readTable(quantileTable({ low: 3, likely: 3, high: 3 }, new Map()), 1.3)).toBe(3);
});

test('mean and variance of the PERT-beta are those of the beta distribution with its alpha and beta', () => {
  // alpha/(alpha+beta) and alpha beta/((alpha+beta)^2 (alpha+beta+1)), scaled: any text on the beta distribution.
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (part) => {
      const estimate = { low: 5, likely: 5 + 12 * part, high: 17 };
      const { alpha, beta } = pertShape(estimate)!;
      const sum = alpha + beta;
      expect(pertMean(estimate)).toBeCloseTo(5 + (12 * alpha) / sum, 9);
      expect(pertBetaVariance(estimate)).toBeCloseTo((144 * alpha * beta) / (sum ** 2 * (sum + 1)), 9);
    }),
  );
});
