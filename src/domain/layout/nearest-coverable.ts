import type { Length } from '../units/length.ts';
import type { UncoveredPart } from './cover-run.ts';
import { coverableLengths, nearestCovered } from './coverable-lengths.ts';
import { type JointBar, jointBarTest } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

/** The nearest length on one side of `needed` that this part could be covered with, its start and its bars left in place. */
export function nearestCoverable(
  shop: SectionShop,
  part: UncoveredPart,
  needed: Length,
  bars: readonly JointBar[],
  side: 'shorter' | 'longer',
): Length | null {
  const farthest = (shop.sums.values.at(-1) ?? 0) + (shop.cut?.max ?? 0);
  const longest = side === 'shorter' ? needed : Math.max(needed, farthest);
  const covered = coverableLengths(shop, part.from, longest, jointBarTest(bars));
  return covered && nearestCovered(covered, needed, side);
}
