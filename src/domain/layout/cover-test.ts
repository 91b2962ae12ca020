import type { Length } from '../units/length.ts';
import { coverLastPart } from './cover-last-part.ts';
import { coverPart } from './cover-part.ts';
import type { UncoveredPart } from './cover-run.ts';
import { barAt, type JointBar } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

/** Whether a part can be covered with these bars in place. */
export type CoverTest = (bars: readonly JointBar[]) => boolean;

export function coverTest(shop: SectionShop, part: UncoveredPart): CoverTest {
  return (bars) => {
    const isBarred = (at: Length) => barAt(bars, at) !== null;
    if ('reach' in part) return coverLastPart(shop, part, isBarred) !== null;
    return coverPart(shop, part, isBarred) !== null;
  };
}
