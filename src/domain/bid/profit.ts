import type { Bid } from '../model.ts';

/**
 * Profit on a cost, unrounded, with both names of it: a markup is a share of the cost, a margin of the price.
 * A margin must be below 100 %: at 100 % no price is high enough, and one is thrown back (the document refuses it).
 *
 * Source: common practice; margin = markup / (1 + markup).
 * Example: a 20 % markup on 100 is 20, a margin of 16.67 %; a 20 % margin on 100 is 25, a markup of 25 %.
 */
export function profitOn(cost: number, { kind, percent }: NonNullable<Bid['profit']>) {
  const markup = kind === 'markup' ? percent / 100 : markupOf(percent / 100);
  return { amount: cost * markup, markupPercent: markup * 100, marginPercent: (markup / (1 + markup)) * 100 };
}

function markupOf(margin: number): number {
  if (!(margin < 1)) throw new RangeError(`a margin of ${margin * 100} % has no price`);
  return margin / (1 - margin);
}
