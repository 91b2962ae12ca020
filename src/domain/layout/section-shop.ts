import type { Prices } from '../model.ts';
import { type Length, METRE } from '../units/length.ts';
import { type StockSums, stockSums } from './stock-sums.ts';

/** What straight sections can be had, and what each costs together with the joint that comes with it. Minor units. */
export interface SectionShop {
  /** Longest first; `cost` holds the piece and one joint. */
  readonly stock: readonly { readonly length: Length; readonly cost: number }[];
  readonly cut: { readonly min: Length; readonly max: Length; readonly step: Length } | null;
  readonly cutCost: (length: Length) => number;
  readonly prices: Prices;
  readonly sums: StockSums;
}

export interface ShopList {
  readonly stockLengths: readonly Length[];
  readonly factoryCut: SectionShop['cut'];
  readonly prices: Prices;
  /** Kit and labour of one joint. */
  readonly jointCost: number;
}

/** The shop for parts up to `longest`. Every piece of a part brings one joint with it, up to a constant of the part. */
export function sectionShop(list: ShopList, longest: Length): SectionShop {
  const { prices, jointCost } = list;
  const cost = (length: Length) => sectionPrice(prices, length) + jointCost;
  return {
    stock: list.stockLengths.map((length) => ({ length, cost: cost(length) })),
    cut: list.factoryCut,
    cutCost: (length) => cost(length) + (prices.cutSurcharge ?? 0),
    prices,
    sums: stockSums(list.stockLengths, longest),
  };
}

/** Price of a straight section: as listed for its exact length, else by the metre rounded once, else 0 (unpriced). */
export function sectionPrice(prices: Prices, length: Length): number {
  const listed = prices.sections.find((section) => section.length === length);
  if (listed !== undefined) return listed.price;
  return priceByMetre(prices, length);
}

/** Multiplied before it is divided, so that a half minor unit is exactly a half and rounds up. Never falls with length. */
export function priceByMetre(prices: Prices, length: Length): number {
  return prices.sectionPerM === null ? 0 : Math.round((prices.sectionPerM * length) / METRE);
}

/** Whether anybody has given a price for a straight section of this length. */
export function isPriced(prices: Prices, length: Length): boolean {
  return prices.sectionPerM !== null || prices.sections.some((section) => section.length === length);
}

/** Whether a factory cut of this length can be ordered: `min + k·step`, at most `max`. */
export function isCuttable(cut: NonNullable<SectionShop['cut']>, length: Length): boolean {
  return length >= cut.min && length <= cut.max && (length - cut.min) % cut.step === 0;
}
