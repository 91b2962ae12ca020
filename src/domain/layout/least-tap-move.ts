import type { Length } from '../units/length.ts';
import type { UncoveredPart } from './cover-run.ts';
import { coverTest } from './cover-test.ts';
import type { JointBar } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

/**
 * Where a fixed tap would have to move to, by the least way, for a covering to exist; null when its bar is not of a tap or no
 * move of it alone helps. Joints of any covering stand on sums of stock from one end of the part or the other, so the tap's
 * new place need only be tried one clearance either side of those; the nearest `tries` of them are.
 */
export function leastTapMove(
  shop: SectionShop,
  part: UncoveredPart,
  bars: readonly JointBar[],
  bar: JointBar,
  tries: number,
): Length | null {
  if (bar.tap === null) return null;
  const { tap } = bar;
  const others = bars.filter((other) => other !== bar);
  const covers = coverTest(shop, part);
  if (!covers(others)) return null;
  const end = 'reach' in part ? part.hardStop : part.to;
  const places = jointPlaces(shop, part, end)
    .flatMap((joint) => [joint - tap.clear, joint + tap.clear])
    .filter((at) => at >= 0 && at <= end)
    .sort((a, b) => Math.abs(a - tap.at) - Math.abs(b - tap.at))
    .slice(0, tries);
  const found = places.find((at) => covers([...others, { ...bar, from: at - tap.clear, to: at + tap.clear }]));
  return found ?? null;
}

function jointPlaces(shop: SectionShop, part: UncoveredPart, end: Length): Length[] {
  const sums = shop.sums.values.filter((sum) => part.from + sum <= end);
  const ends = 'reach' in part && part.reach < end ? [part.reach, part.nominal, end] : [end];
  return [...new Set([...sums.map((sum) => part.from + sum), ...ends.flatMap((to) => sums.map((sum) => to - sum))])];
}
