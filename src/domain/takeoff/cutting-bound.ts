import { bestPattern, type Steps } from './best-pattern.ts';

/** What the linear relaxation of a cutting-stock problem says: a proven least number of sticks and the patterns behind it. */
export interface CuttingBound {
  /** No plan needs fewer sticks than this. */
  readonly sticks: number;
  /** The relaxation's patterns (pieces of each size in one stick) and how often each is used, most used first. */
  readonly patterns: readonly { readonly counts: readonly number[]; readonly times: number }[];
}

const EPSILON = 1e-9;

/**
 * The linear bound of one-dimensional cutting stock by column generation: pieces of `sizes[i]`, `demand[i]` of each (all
 * above zero), out of sticks of `stock`. The bound is Farley's, read off the prices, so it stands even where `steps`
 * ran out before the last pivot.
 *
 * Source: Gilmore & Gomory, Operations Research 9 (1961) 849-859; Farley, Operations Research 38 (1990) 922-923.
 * Example: `cuttingBound(100, [45, 36, 31, 14], [97, 610, 395, 211], { left: 10_000 }).sticks` is 453 (the relaxation says 452.25).
 */
export function cuttingBound(
  stock: number,
  sizes: readonly number[],
  demand: readonly number[],
  steps: Steps,
): CuttingBound {
  const most = sizes.map((size, i) => Math.min(Math.floor(stock / size), demand[i]!));
  const columns = most.map((count, i) => sizes.map((_, row) => (row === i ? count : 0)));
  const inverse = most.map((count, i) => sizes.map((_, row) => (row === i ? 1 / count : 0)));
  const times = demand.map((count, i) => count / most[i]!);
  let least = 0;
  while (steps.left > 0) {
    steps.left -= sizes.length ** 2;
    const prices = sizes.map((_, i) => inverse.reduce((sum, row) => sum + row[i]!, 0));
    const entering = bestPattern(stock, sizes, most, prices, steps);
    least = Math.max(least, dot(prices, demand) / Math.max(1, entering.atMost));
    if (entering.value <= 1 + EPSILON || !exchange(columns, inverse, times, entering.counts)) break;
  }
  const patterns = columns.map((counts, i) => ({ counts, times: Math.max(0, times[i]!) }));
  return { sticks: Math.ceil(least - 1e-6), patterns: patterns.sort((a, b) => b.times - a.times) };
}

/** One simplex step: the entering pattern replaces the one that runs out first. False when none does (a numerical dead end). */
function exchange(columns: number[][], inverse: number[][], times: number[], entering: readonly number[]): boolean {
  const change = inverse.map((row) => dot(row, entering));
  let leaving = -1;
  let ratio = Number.POSITIVE_INFINITY;
  for (let i = 0; i < change.length; i++) {
    if (change[i]! <= EPSILON || times[i]! / change[i]! >= ratio - 1e-12) continue;
    leaving = i;
    ratio = times[i]! / change[i]!;
  }
  if (leaving < 0) return false;
  const pivotRow = inverse[leaving]!.map((value) => value / change[leaving]!);
  for (let i = 0; i < inverse.length; i++) {
    if (i !== leaving) inverse[i] = inverse[i]!.map((value, j) => value - change[i]! * pivotRow[j]!);
    times[i] = i === leaving ? ratio : times[i]! - ratio * change[i]!;
  }
  inverse[leaving] = pivotRow;
  columns[leaving] = [...entering];
  return true;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
