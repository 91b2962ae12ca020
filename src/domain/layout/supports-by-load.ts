import { atCapacity, capacityProblem } from './capacity-problem.ts';
import { holdingLayers } from './holding-layers.ts';
import { leastSquares } from './least-squares.ts';
import type { LoadLine } from './load-line.ts';
import { nearestBefore } from './nearest-before.ts';
import { supportColumns } from './support-columns.ts';
import type { SupportGrid } from './support-grid.ts';

/** Pairs of neighbours that are held at most; a finer step than that is refused, not searched in part. */
export const MOST_PAIRS = 8_000_000;

/**
 * The places that win when every support must also carry its simple-span load: fewest, then the least sum of squared gaps,
 * then the smallest list. Exact; null when no choice holds.
 *
 * What a support carries follows from the gap before it and the gap after it, so the search goes over pairs of neighbours. How
 * few suffice is found first, in one pass for each; then only those pairs are weighed that a layout of so many can have and
 * that are no worse than a layout at hand. Time: the places times how many take part in each pass, then at most the pairs
 * within reach, each looked at once; memory: the ways that are worth keeping, no more than the pairs.
 */
export function supportsByLoad(grid: SupportGrid, line: LoadLine, capacityKg: number): readonly number[] | null {
  const problem = capacityProblem(grid, line, capacityKg);
  const unlimited = nearestBefore(problem);
  if (unlimited === null) return null;
  return leastSquares(problem, supportColumns(problem, holdingLayers(problem, unlimited)));
}

/**
 * The least capacity by which any layout holds, kg, no more than 0.1 too high, when none holds at `fromKg` and one does at
 * `toKg`: by halving, since what holds at one capacity holds at any above it.
 */
export function leastCapacity(grid: SupportGrid, line: LoadLine, fromKg: number, toKg: number): number {
  const problem = capacityProblem(grid, line, toKg);
  let [low, high] = [fromKg, toKg];
  while (high - low > 0.1) {
    const middle = (low + high) / 2;
    if (nearestBefore(atCapacity(problem, middle)) === null) low = middle;
    else high = middle;
  }
  return Math.ceil(high * 10) / 10;
}

/** An upper bound of the pairs of places within reach of each other. */
export function pairsOf(grid: SupportGrid): number {
  const farthest = grid.reach.reduce((most, last, place) => Math.max(most, last - place), 0);
  return grid.allowed.length * (farthest + 1);
}
