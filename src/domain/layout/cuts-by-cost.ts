import type { Prices } from '../model.ts';
import type { Length } from '../units/length.ts';
import { isCuttable, priceByMetre, type SectionShop } from './section-shop.ts';

/** The cut lengths that are wanted, and the one that would be best among those of equal price. */
interface Window {
  readonly from: Length;
  readonly to: Length;
  readonly best: Length;
}

/**
 * The factory cuts of a window, cheapest first and of equal price the one nearest to `best` first, without making a list:
 * a price by the metre never falls with length, so cuts of one price are neighbours; those with a price of their own in the
 * list are merged in.
 */
export function* cutsByCost(shop: SectionShop, window: Window): Generator<Length> {
  const bands = bandsOf(shop, window);
  const listed = listedCuts(shop, window);
  let next = listed.next();
  for (const length of bands) {
    while (next.done !== true && isBefore(shop, window, next.value, length)) {
      yield next.value;
      next = listed.next();
    }
    yield length;
  }
  while (next.done !== true) {
    yield next.value;
    next = listed.next();
  }
}

/** Cuts without a listed price: band by band of equal price, in each from the best outwards. */
function* bandsOf(shop: SectionShop, window: Window): Generator<Length> {
  if (shop.cut === null) return;
  const { min, step } = shop.cut;
  const listed = new Set(shop.prices.sections.map((section) => section.length));
  const last = lastStep(shop.cut, window);
  for (let first = firstStep(shop.cut, window); first <= last; ) {
    const end = endOfBand(shop.prices, shop.cut, first, last);
    for (const k of outwards(first, end, (window.best - min) / step)) {
      const length = min + k * step;
      if (!listed.has(length)) yield length;
    }
    first = end + 1;
  }
}

type Cut = NonNullable<SectionShop['cut']>;

function firstStep(cut: Cut, window: Window): number {
  return Math.max(0, Math.ceil((window.from - cut.min) / cut.step));
}

function lastStep(cut: Cut, window: Window): number {
  return Math.floor((Math.min(window.to, cut.max) - cut.min) / cut.step);
}

/** The last step, up to `last`, whose price by the metre is still that of `first`. */
function endOfBand(prices: Prices, cut: Cut, first: number, last: number): number {
  const price = (k: number) => priceByMetre(prices, cut.min + k * cut.step);
  const wanted = price(first);
  let low = first;
  let high = last;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (price(middle) === wanted) low = middle;
    else high = middle - 1;
  }
  return low;
}

function* outwards(first: number, last: number, best: number): Generator<number> {
  let below = Math.min(last, Math.floor(best));
  let above = Math.max(first, below + 1);
  while (below >= first || above <= last) {
    const takeBelow = above > last || (below >= first && best - below <= above - best);
    yield takeBelow ? below-- : above++;
  }
}

function* listedCuts(shop: SectionShop, window: Window): Generator<Length> {
  const { cut } = shop;
  if (cut === null) return;
  const lengths = shop.prices.sections
    .map((section) => section.length)
    .filter((length) => length >= window.from && length <= window.to && isCuttable(cut, length));
  yield* [...new Set(lengths)].sort((a, b) => (isBefore(shop, window, a, b) ? -1 : 1));
}

function isBefore(shop: SectionShop, window: Window, a: Length, b: Length): boolean {
  const difference = shop.cutCost(a) - shop.cutCost(b);
  return difference < 0 || (difference === 0 && Math.abs(a - window.best) <= Math.abs(b - window.best));
}
