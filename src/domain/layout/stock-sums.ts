import type { Length } from '../units/length.ts';

/**
 * Every length up to a limit that stock pieces alone add up to, shortest first, starting with 0.
 * `less[i * kinds + k]` and `more[i * kinds + k]` are the places of `values[i]` less and plus stock length `k`, or -1.
 */
export interface StockSums {
  readonly values: readonly Length[];
  readonly kinds: number;
  readonly less: Int32Array;
  readonly more: Int32Array;
  /** The sums would be too many to search: the list is cut short, and no covering may be claimed impossible from it. */
  readonly cutShort: boolean;
}

/** Above this the stock lengths divide so finely that searching them stops being work for a request. */
const MOST_SUMS = 200_000;
const MOST_SLOTS = 50_000_000;

/** All sums of the stock lengths up to `longest`. `stockSums([3, 2], 6).values` is `[0, 2, 3, 4, 5, 6]`. */
export function stockSums(stock: readonly Length[], longest: Length): StockSums {
  const unit = stock.reduce(greatestCommonDivisor, 0);
  const slots = unit === 0 || longest < 0 ? 0 : Math.floor(longest / unit);
  if (slots > MOST_SLOTS) return linked([0], stock, true);
  const reached = new Uint8Array(slots + 1);
  reached[0] = 1;
  const values: Length[] = [];
  for (let slot = 0; slot <= slots; slot++) {
    if (reached[slot] === 0) continue;
    if (values.length === MOST_SUMS) return linked(values, stock, true);
    values.push(slot * unit);
    for (const length of stock) {
      const next = slot + length / unit;
      if (next <= slots) reached[next] = 1;
    }
  }
  return linked(values, stock, false);
}

function linked(values: readonly Length[], stock: readonly Length[], cutShort: boolean): StockSums {
  const kinds = stock.length;
  const place = new Map(values.map((value, index) => [value, index]));
  const less = new Int32Array(values.length * kinds).fill(-1);
  const more = new Int32Array(values.length * kinds).fill(-1);
  values.forEach((value, index) => {
    for (let kind = 0; kind < kinds; kind++) {
      const next = place.get(value + (stock[kind] ?? 0));
      if (next === undefined) continue;
      more[index * kinds + kind] = next;
      less[next * kinds + kind] = index;
    }
  });
  return { values, kinds, less, more, cutShort };
}

export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
