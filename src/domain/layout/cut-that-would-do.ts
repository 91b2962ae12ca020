import type { Length } from '../units/length.ts';
import type { UncoveredPart } from './cover-run.ts';
import { type JointBar, jointBarTest } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

/** More pairs of sums than this, one on each side of the special length, are not gone through. */
const MOST_PAIRS = 300_000_000;

/**
 * The one special length, between the shortest and the longest of stock, that would make a covering with fewest pieces, the
 * shortest of those; null when none does. 61 ft from 5, 10 and 20 ft stock asks for 11 ft.
 */
export function cutThatWouldDo(
  shop: SectionShop,
  part: UncoveredPart,
  needed: Length,
  bars: readonly JointBar[],
): Length | null {
  const lengths = shop.stock.map((piece) => piece.length);
  const [shortest, longest] = [Math.min(...lengths), Math.max(...lengths)];
  const isBarred = jointBarTest(bars);
  const near = fewestPieces(shop, needed, (sum) => isBarred(part.from + sum));
  const far = fewestPieces(shop, needed, (sum) => isBarred(part.from + needed - sum));
  const { values } = shop.sums;
  if ((near.length * near.length * (longest - shortest)) / needed > MOST_PAIRS) return null;
  let [special, fewest] = [0, Number.POSITIVE_INFINITY];
  let first = near.length;
  for (let before = 0; before < near.length; before++) {
    const left = needed - values[before]!;
    while (first > 0 && values[first - 1]! > left - shortest) first--;
    for (let after = first - 1; after >= 0 && near[before]! < fewest; after--) {
      const length = left - values[after]!;
      if (length > longest) break;
      const pieces = near[before]! + far[after]! + 1;
      if (pieces < fewest || (pieces === fewest && length < special)) [special, fewest] = [length, pieces];
    }
  }
  return fewest === Number.POSITIVE_INFINITY ? null : special;
}

/** For each sum of stock up to `longest`: the fewest pieces that make it up with every joint, its own too, out of the bars. */
function fewestPieces(shop: SectionShop, longest: Length, isBarred: (sum: Length) => boolean): Float64Array {
  const { values, kinds, less } = shop.sums;
  const beyond = values.findIndex((value) => value > longest);
  const pieces = new Float64Array(beyond < 0 ? values.length : beyond).fill(Number.POSITIVE_INFINITY);
  pieces[0] = 0;
  for (let sum = 1; sum < pieces.length; sum++) {
    if (isBarred(values[sum]!)) continue;
    for (let kind = 0; kind < kinds; kind++) {
      const rest = less[sum * kinds + kind]!;
      if (rest >= 0) pieces[sum] = Math.min(pieces[sum]!, pieces[rest]! + 1);
    }
  }
  return pieces;
}
