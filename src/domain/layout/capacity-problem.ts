import type { LoadLine } from './load-line.ts';
import { type LoadSums, loadSums, onFarEnd, onNearEnd } from './load-sums.ts';
import type { SupportGrid } from './support-grid.ts';

/** A load at the capacity passes; this much, as a share of it, is only the noise of the sums. */
const NOISE = 1e-9;

/** Where supports may stand, what hangs there, and what each may carry by simple spans. Places are numbers of the grid. */
export interface CapacityProblem {
  readonly grid: SupportGrid;
  readonly sums: LoadSums;
  readonly capacityKg: number;
  /** The first place from which each place is within reach. */
  readonly firstBefore: Int32Array;
}

export function capacityProblem(grid: SupportGrid, line: LoadLine, capacityKg: number): CapacityProblem {
  const places = Array.from(grid.allowed, (_, place) => grid.first + place * grid.step);
  const firstBefore = new Int32Array(places.length);
  let first = 0;
  for (let place = 0; place < places.length; place++) {
    while (first < place && grid.reach[first]! < place) first++;
    firstBefore[place] = first;
  }
  return { grid, sums: loadSums(line, places), capacityKg: capacityKg * (1 + NOISE), firstBefore };
}

/** The same supports and loads at another capacity. */
export function atCapacity(problem: CapacityProblem, capacityKg: number): CapacityProblem {
  return { ...problem, capacityKg: capacityKg * (1 + NOISE) };
}

/** What a place takes of the span that ends at it. The farther the span comes from, the more. */
export function shareFromBefore({ sums }: CapacityProblem, before: number, place: number): number {
  return onFarEnd(sums, before, place);
}

/** What a place takes of the span that begins at it. The farther the span goes, the more. */
export function shareFromAfter({ sums }: CapacityProblem, place: number, next: number): number {
  return onNearEnd(sums, place, next);
}

/** What the first support takes of everything before it, its own place included. */
export function overhangBefore({ sums }: CapacityProblem, place: number): number {
  return sums.kg[place]!;
}

/** What the last support takes of everything after it; infinite where the last support may not stand. */
export function overhangAfter({ grid, sums }: CapacityProblem, place: number): number {
  return place >= grid.earliestLast ? sums.total - sums.kg[place]! : Number.POSITIVE_INFINITY;
}
