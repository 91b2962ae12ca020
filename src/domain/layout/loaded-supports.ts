import type { Length } from '../units/length.ts';
import { continuousLoads } from './continuous-beam.ts';
import type { LoadLine } from './load-line.ts';
import type { PlacedSupport } from './result.ts';
import { simpleSpanLoads } from './simple-spans.ts';
import type { SupportGrid } from './support-grid.ts';

/** Supports at these places of the grid with both of their loads. */
export function loadedSupports(grid: SupportGrid, line: LoadLine, places: readonly number[]): readonly PlacedSupport[] {
  const at = places.map((place): Length => grid.first + place * grid.step);
  const simple = simpleSpanLoads(line, at);
  const continuous = continuousLoads(line, at);
  return at.map((distance, index) => ({
    at: distance,
    loadKg: simple[index]!,
    continuousLoadKg: continuous[index]!,
  }));
}
