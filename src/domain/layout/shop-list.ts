import type { LayoutContext } from './context-for.ts';
import { type SectionShop, type ShopList, sectionShop } from './section-shop.ts';
import type { StraightParts } from './straight-parts.ts';

/** What may be bought for a run, and what a joint costs there: kit and labour, minor units. */
export function shopList({ type, jointLabour }: LayoutContext): ShopList {
  return {
    stockLengths: type.stockLengths,
    factoryCut: type.factoryCut,
    prices: type.prices,
    jointCost: (type.prices.jointKit ?? 0) + jointLabour,
  };
}

/** The shop for the straight parts of one run. */
export function shopFor(list: ShopList, { inner, last }: StraightParts): SectionShop {
  const longest = inner.reduce((most, part) => Math.max(most, part.to - part.from), last.hardStop - last.from);
  return sectionShop(list, longest);
}
