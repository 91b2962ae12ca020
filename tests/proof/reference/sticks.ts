/**
 * The fewest sticks that yield some pieces, by a table over all subsets of the pieces: for each subset the fewest sticks
 * and, among those, the most room left in the last one. For a dozen pieces.
 */
export function fewestSticksBySubsets(stock: number, pieces: readonly number[]): number {
  const subsets = 2 ** pieces.length;
  const sticks = new Array<number>(subsets).fill(Number.POSITIVE_INFINITY);
  const room = new Array<number>(subsets).fill(0);
  sticks[0] = 0;
  for (let set = 0; set < subsets; set += 1) {
    for (const [i, length] of pieces.entries()) {
      if ((set & (1 << i)) !== 0) continue;
      const next = set | (1 << i);
      const fits = room[set]! >= length;
      const [count, left] = fits ? [sticks[set]!, room[set]! - length] : [sticks[set]! + 1, stock - length];
      if (count < sticks[next]! || (count === sticks[next]! && left > room[next]!)) {
        sticks[next] = count;
        room[next] = left;
      }
    }
  }
  return sticks[subsets - 1]!;
}
