import { isPriced, sectionPrice } from '../layout/section-shop.ts';
import type { Prices } from '../model.ts';
import type { Length } from '../units/length.ts';

/** What a type prices by the piece: the item of the takeoff, the price it takes, and what people call it. */
export const PRICED_PIECES = [
  ['elbow', 'elbow', 'elbow'],
  ['tee', 'tee', 'tee'],
  ['end-feed', 'endFeed', 'end feed'],
  ['end-cap', 'endCap', 'end cap'],
  ['support', 'support', 'hanger'],
  ['tap', 'tap', 'tap-off'],
  ['drop', 'drop', 'drop cord'],
] as const;

/** The price of one section, minor units; null without one. A cut one has the surcharge in it. */
export function sectionPieceOf(prices: Prices, kind: string, length: Length): number | null {
  if (!isPriced(prices, length)) return null;
  if (kind !== 'cut') return sectionPrice(prices, length);
  return prices.cutSurcharge === null ? null : sectionPrice(prices, length) + prices.cutSurcharge;
}
