/** Steps that a search may still take. Counted, not timed, so that the same job always stops at the same place. */
export interface Steps {
  left: number;
}

const MOST_FILLS = 20_000;

/**
 * The most valuable set of pieces that one stick holds: `most[i]` at the most of `sizes[i]`, each worth `prices[i]`.
 * Depth-first search in order of worth per length, cut off where even a filled-up remainder cannot win (the bounded
 * knapsack). Exact up to 20 000 fillings or the end of `steps`; past that `atMost` still bounds every pattern's value.
 *
 * Example: `bestPattern(100, [45, 36, 14], [2, 2, 7], [0.5, 0.5, 0.1], { left: 100 }).counts` is `[1, 1, 1]`.
 */
export function bestPattern(
  stock: number,
  sizes: readonly number[],
  most: readonly number[],
  prices: readonly number[],
  steps: Steps,
): { readonly counts: readonly number[]; readonly value: number; readonly atMost: number } {
  const order = sizes.map((_, i) => i).filter((i) => prices[i]! > 0 && most[i]! > 0);
  order.sort((a, b) => prices[b]! / sizes[b]! - prices[a]! / sizes[a]! || a - b);
  const counts: number[] = sizes.map(() => 0);
  const end = Math.max(0, steps.left - MOST_FILLS);
  let best = { counts: [...counts], value: 0 };
  let unseen = 0;

  function fill(position: number, room: number, value: number): void {
    if (value > best.value + 1e-12) best = { counts: [...counts], value };
    const item = order[position];
    if (item === undefined) return;
    const promise = value + (room * prices[item]!) / sizes[item]!;
    if (promise <= best.value + 1e-12) return;
    if (steps.left <= end) {
      unseen = Math.max(unseen, promise);
      return;
    }
    steps.left--;
    for (let count = Math.min(most[item]!, Math.floor(room / sizes[item]!)); count >= 0; count--) {
      counts[item] = count;
      fill(position + 1, room - count * sizes[item]!, value + count * prices[item]!);
    }
    counts[item] = 0;
  }

  fill(0, stock, 0);
  return { ...best, atMost: Math.max(best.value, unseen) };
}
