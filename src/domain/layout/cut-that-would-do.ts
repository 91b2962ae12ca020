import type { Length } from '../units/length.ts';
import { coverPart } from './cover-part.ts';
import type { UncoveredPart } from './cover-run.ts';
import { barAt, type JointBar } from './joint-bars.ts';
import type { SectionShop } from './section-shop.ts';

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
  const specials = shop.sums.values
    .map((sum) => needed - sum)
    .filter((special) => special >= shortest && special <= longest)
    .reverse();
  let best: { special: Length; pieces: number } | null = null;
  for (const special of specials) {
    const pieces = piecesWith(shop, part, needed, special, bars);
    if (pieces !== null && (best === null || pieces < best.pieces)) best = { special, pieces };
  }
  return best?.special ?? null;
}

function piecesWith(
  shop: SectionShop,
  part: UncoveredPart,
  needed: Length,
  special: Length,
  bars: readonly JointBar[],
): number | null {
  const counting: SectionShop = {
    ...shop,
    stock: shop.stock.map((piece) => ({ ...piece, cost: 1 })),
    cut: { min: special, max: special, step: 1 },
    cutCost: () => 1,
  };
  const whole = { from: part.from, to: part.from + needed, towardsFeed: part.towardsFeed };
  return coverPart(counting, whole, (at) => barAt(bars, at) !== null)?.pieces.length ?? null;
}
