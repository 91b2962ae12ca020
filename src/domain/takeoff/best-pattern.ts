/**
 * The most valuable set of pieces that one stick holds: `most[i]` at the most of `sizes[i]`, each worth `prices[i]`.
 * Exact, by depth-first search in order of worth per length, cut off where even a filled-up remainder cannot win
 * (the bounded knapsack). Pieces worth nothing are left out.
 *
 * Example: `bestPattern(100, [45, 36, 14], [2, 2, 7], [0.5, 0.5, 0.1]).counts` is `[1, 1, 1]`.
 */
export function bestPattern(
  stock: number,
  sizes: readonly number[],
  most: readonly number[],
  prices: readonly number[],
): { readonly counts: readonly number[]; readonly value: number } {
  const order = sizes.map((_, i) => i).filter((i) => prices[i]! > 0 && most[i]! > 0);
  order.sort((a, b) => prices[b]! / sizes[b]! - prices[a]! / sizes[a]! || a - b);
  const counts: number[] = sizes.map(() => 0);
  let best = { counts: [...counts], value: 0 };

  function fill(position: number, room: number, value: number): void {
    if (value > best.value + 1e-12) best = { counts: [...counts], value };
    const item = order[position];
    if (item === undefined || value + (room * prices[item]!) / sizes[item]! <= best.value + 1e-12) return;
    for (let count = Math.min(most[item]!, Math.floor(room / sizes[item]!)); count >= 0; count--) {
      counts[item] = count;
      fill(position + 1, room - count * sizes[item]!, value + count * prices[item]!);
    }
    counts[item] = 0;
  }

  fill(0, stock, 0);
  return best;
}
