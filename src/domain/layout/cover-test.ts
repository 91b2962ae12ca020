import { coverLastPart } from './cover-last-part.ts';
import { coverPart } from './cover-part.ts';
import type { UncoveredPart } from './cover-run.ts';
import { type CoverableLengths, coverableLengths, coversAny } from './coverable-lengths.ts';
import { type JointBar, jointBarTest } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

/** Whether a part can be covered with these bars in place. */
export type CoverTest = (bars: readonly JointBar[]) => boolean;

export function coverTest(shop: SectionShop, part: UncoveredPart): CoverTest {
  const [shortest, longest] = 'reach' in part ? [part.reach, part.hardStop] : [part.to, part.to];
  return (bars) => {
    const isBarred = jointBarTest(bars);
    const covered: CoverableLengths | null = coverableLengths(shop, part.from, longest - part.from, isBarred);
    if (covered !== null) return coversAny(covered, shortest - part.from, longest - part.from);
    if ('reach' in part) return coverLastPart(shop, part, isBarred) !== null;
    return coverPart(shop, part, isBarred) !== null;
  };
}
