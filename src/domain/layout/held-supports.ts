import type { LoadLine } from './load-line.ts';
import { simpleSpanLoads } from './simple-spans.ts';
import type { SupportGrid } from './support-grid.ts';
import { MOST_PAIRS, pairsOf, supportsByLoad } from './supports-by-load.ts';

/**
 * The places that win once every support must also carry its simple-span load, from those that win without: the same ones
 * where they hold. Null: no choice holds. `too-many`: the step is too fine to look for another.
 */
export function heldSupports(
  grid: SupportGrid,
  line: LoadLine,
  winner: readonly number[],
  capacityKg: number | null,
): readonly number[] | 'too-many' | null {
  if (capacityKg === null) return winner;
  const loads = simpleSpanLoads(
    line,
    winner.map((place) => grid.first + place * grid.step),
  );
  if (loads.every((load) => load <= capacityKg * (1 + 1e-9))) return winner;
  return pairsOf(grid) > MOST_PAIRS ? 'too-many' : supportsByLoad(grid, line, capacityKg);
}
