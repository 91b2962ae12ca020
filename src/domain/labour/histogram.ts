export interface Bar {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/**
 * Sorted totals in bars of equal width, the first from the least and the last to the greatest; counts sum to the totals.
 * Totals that are all the same make one bar.
 */
export function histogram(sorted: Float64Array, bars: number): readonly Bar[] {
  const least = sorted[0];
  const greatest = sorted.at(-1);
  if (least === undefined || greatest === undefined) return [];
  if (least === greatest) return [{ from: least, to: greatest, count: sorted.length }];
  const width = (greatest - least) / bars;
  const counts = new Array<number>(bars).fill(0);
  for (const total of sorted) {
    const bar = Math.min(bars - 1, Math.floor((total - least) / width));
    counts[bar] = counts[bar]! + 1;
  }
  return counts.map((count, bar) => ({ from: least + bar * width, to: least + (bar + 1) * width, count }));
}
