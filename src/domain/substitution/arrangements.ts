import { isCuttable } from '../layout/section-shop.ts';
import type { BuswayType } from '../model.ts';
import type { Length } from '../units/length.ts';

/** What straight sections can be had. */
export type Sold = Pick<BuswayType, 'stockLengths' | 'factoryCut'>;

/** More orders of heads than this are not gone through: a sheet with so many lengths has shorter answers. */
const MOST_TRIED = 20_000;

/**
 * Every order of exactly so many sections that adds up to a length: stock lengths first, longest first, then those with one
 * factory cut, which is never as long as a stock length. Lengths in 1/80 mm.
 *
 * @example [...arrangements(20 ft, 2, { stockLengths: [20 ft, 10 ft, 5 ft], factoryCut: null })] // [[10 ft, 10 ft]]
 */
export function* arrangements(length: Length, pieces: number, sold: Sold): Generator<readonly Length[]> {
  const stock = [...new Set(sold.stockLengths)].filter((one) => one < length).sort((a, b) => b - a);
  const whole = headsOf(length, pieces - 1, stock);
  for (const head of whole) {
    const rest = length - sum(head);
    if (stock.includes(rest)) yield [...head, rest];
  }
  const { factoryCut } = sold;
  if (factoryCut === null) return;
  for (const head of headsOf(length, pieces - 1, stock)) {
    const cut = length - sum(head);
    if (stock.includes(cut) || !isCuttable(factoryCut, cut)) continue;
    for (let place = 0; place < pieces; place++) yield [...head.slice(0, place), cut, ...head.slice(place)];
  }
}

/** Whether these sections, two or more, are one of the arrangements of a length. */
export function fills(lengths: readonly Length[], length: Length, { stockLengths, factoryCut }: Sold): boolean {
  if (lengths.length < 2 || lengths.some((one) => one <= 0) || sum(lengths) !== length) return false;
  const cuts = lengths.filter((one) => !stockLengths.includes(one));
  return cuts.length <= 1 && cuts.every((cut) => factoryCut !== null && isCuttable(factoryCut, cut));
}

/** Orders of so many stock lengths that leave something. */
function headsOf(length: Length, count: number, stock: readonly Length[]): Length[][] {
  let heads: Length[][] = [[]];
  for (let turn = 0; turn < count; turn++) {
    heads = heads
      .flatMap((head) => {
        const left = length - sum(head);
        return stock.filter((one) => one < left).map((one) => [...head, one]);
      })
      .slice(0, MOST_TRIED);
  }
  return heads;
}

function sum(lengths: readonly Length[]): Length {
  return lengths.reduce((total, one) => total + one, 0);
}
