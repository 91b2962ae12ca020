import type { Length } from '../units/length.ts';
import { coverPart } from './cover-part.ts';
import type { UncoveredPart } from './cover-run.ts';
import { barAt, type JointBar } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

/** Cuts tried for each sum of stock, from the wanted length outwards, and lengths tried in all. */
const STEPS_EACH = 200;
const MOST_TRIES = 2000;

/** The nearest length on one side of `needed` that this part could be covered with, its start and its bars left in place. */
export function nearestCoverable(
  shop: SectionShop,
  part: UncoveredPart,
  needed: Length,
  bars: readonly JointBar[],
  side: 'shorter' | 'longer',
): Length | null {
  const isBarred = (at: Length) => barAt(bars, at) !== null;
  const { from, towardsFeed } = part;
  const found = lengthsBeside(shop, needed, side).find(
    (length) => coverPart(shop, { from, to: from + length, towardsFeed }, isBarred) !== null,
  );
  return found ?? null;
}

/** Lengths that pieces add up to on one side of `needed`, nearest first, no bars considered. */
function lengthsBeside(shop: SectionShop, needed: Length, side: 'shorter' | 'longer'): Length[] {
  const beside = (length: Length) => length > 0 && (side === 'shorter' ? length < needed : length > needed);
  const stock = shop.sums.values;
  // Where there are very many sums, cuts are added to those near enough for the result to lie beside the wanted length.
  const far = (shop.cut?.max ?? 0) + Math.max(...shop.stock.map((piece) => piece.length));
  const near = stock.length <= MOST_TRIES ? stock : stock.filter((sum) => Math.abs(needed - sum) <= far);
  const cut = near.flatMap((sum) => cutLengths(shop, needed - sum, side).map((length) => sum + length));
  const lengths = [...new Set([...stock, ...cut].filter(beside))];
  return lengths.sort((a, b) => Math.abs(a - needed) - Math.abs(b - needed)).slice(0, MOST_TRIES);
}

/** The type's cuts nearest to `left` on one side of it. */
function cutLengths(shop: SectionShop, left: Length, side: 'shorter' | 'longer'): Length[] {
  if (shop.cut === null) return [];
  const { min, max, step } = shop.cut;
  const steps = Math.floor((max - min) / step);
  const near = (left - min) / step;
  const first = side === 'shorter' ? Math.min(steps, Math.ceil(near) - 1) : Math.max(0, Math.floor(near) + 1);
  const way = side === 'shorter' ? -1 : 1;
  const lengths: Length[] = [];
  for (let k = first; k >= 0 && k <= steps && lengths.length < STEPS_EACH; k += way) lengths.push(min + k * step);
  return lengths;
}
