import fc from 'fast-check';
import { expect, test } from 'vitest';
import { histogram } from '../../../src/domain/labour/histogram.ts';

test('bars of equal width hold every total once', () => {
  expect(histogram(new Float64Array([0, 1, 1.5, 2, 3.9, 4]), 4).map(({ count }) => count)).toEqual([1, 2, 1, 2]);
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 200 }),
      fc.integer({ min: 1, max: 40 }),
      (totals, bars) => {
        const drawn = histogram(new Float64Array(totals).sort(), bars);
        expect(drawn.reduce((sum, { count }) => sum + count, 0)).toBe(totals.length);
        expect(drawn[0]?.from).toBe(Math.min(...totals));
        expect(drawn.at(-1)?.to).toBeCloseTo(Math.max(...totals), 6);
      },
    ),
    { seed: 7 },
  );
});

test('totals that are all the same are one bar, and no totals none', () => {
  expect(histogram(new Float64Array([3, 3]), 10)).toEqual([{ from: 3, to: 3, count: 2 }]);
  expect(histogram(new Float64Array(0), 10)).toEqual([]);
});
