import fc from 'fast-check';
import { expect, it } from 'vitest';
import { coverPart } from '../../../src/domain/layout/cover-part.ts';
import { coverableLengths, coversAny, nearestCovered } from '../../../src/domain/layout/coverable-lengths.ts';
import { cutThatWouldDo } from '../../../src/domain/layout/cut-that-would-do.ts';
import { type JointBar, jointBarTest } from '../../../src/domain/layout/joint-bars.ts';
import { sectionShop } from '../../../src/domain/layout/section-shop.ts';
import { aType } from '../../support/job.ts';

const { prices } = aType();
const LONGEST = 60;

/** Small whole numbers for lengths: what is marked in one pass is what a search for each length finds. */
const shops = fc.record({
  stockLengths: fc.uniqueArray(fc.integer({ min: 2, max: 12 }), { minLength: 1, maxLength: 3 }),
  factoryCut: fc.option(
    fc
      .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 1, max: 5 }))
      .map(([min, more, step]) => ({ min, max: min + more, step })),
  ),
});
const intervals = fc.array(
  fc
    .tuple(fc.integer({ min: -2, max: 130 }), fc.integer({ min: 0, max: 30 }))
    .map(
      ([from, wide]): JointBar => ({ kind: 'zone', from: from / 2, to: (from + wide) / 2, name: 'zone', tap: null }),
    ),
  { maxLength: 5 },
);
const starts = fc.integer({ min: 0, max: 5 });

it('marks the lengths that a search for each of them finds', () => {
  fc.assert(
    fc.property(shops, intervals, starts, (list, bars, from) => {
      const shop = sectionShop({ ...list, prices, jointCost: 1 }, LONGEST);
      const isBarred = jointBarTest(bars);
      const marked = coverableLengths(shop, from, LONGEST, isBarred)!;
      const lengths = Array.from({ length: LONGEST + 1 }, (_, length) => length);
      const found = lengths.filter(
        (length) => coverPart(shop, { from, to: from + length, towardsFeed: 'from' }, isBarred) !== null,
      );
      expect(lengths.filter((length) => coversAny(marked, length, length))).toEqual(found);
      const beside = (side: 'shorter' | 'longer') => nearestCovered(marked, 30, side);
      expect(beside('shorter')).toBe(found.findLast((length) => length > 0 && length < 30) ?? null);
      expect(beside('longer')).toBe(found.find((length) => length > 30) ?? null);
    }),
    { numRuns: 300 },
  );
});

it('offers the special length that makes a covering with fewest pieces, and the shortest of those', () => {
  fc.assert(
    fc.property(shops, intervals, starts, fc.integer({ min: 1, max: 40 }), ({ stockLengths }, bars, from, needed) => {
      const shop = sectionShop({ stockLengths, factoryCut: null, prices, jointCost: 1 }, LONGEST);
      const part = { from, to: from + needed, towardsFeed: 'from' as const };
      const isBarred = jointBarTest(bars);
      fc.pre(coverPart(shop, part, isBarred) === null);
      const piecesWith = (special: number) => {
        const cut = { min: special, max: special, step: 1 };
        const counting = { ...shop, stock: shop.stock.map((piece) => ({ ...piece, cost: 1 })), cut, cutCost: () => 1 };
        return coverPart(counting, part, isBarred)?.pieces.length ?? Number.POSITIVE_INFINITY;
      };
      const [shortest, longest] = [Math.min(...stockLengths), Math.max(...stockLengths)];
      const specials = Array.from({ length: longest - shortest + 1 }, (_, more) => shortest + more);
      const best = specials.toSorted((a, b) => piecesWith(a) - piecesWith(b) || a - b)[0]!;
      expect(cutThatWouldDo(shop, part, needed, bars)).toBe(piecesWith(best) < Number.POSITIVE_INFINITY ? best : null);
    }),
    { numRuns: 300 },
  );
});
