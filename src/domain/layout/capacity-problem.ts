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

/** What does not change with the capacity is worked out once for a grid: the search may be asked for again at a lower one. */
export function capacityProblem(grid: SupportGrid, line: LoadLine, capacityKg: number): CapacityProblem {
  const known = prepared.get(grid);
  const problem = known !== undefined && known.line === line ? known : prepare(grid, line);
  return atCapacity(problem, capacityKg);
}

/** The same supports and loads at another capacity. */
export function atCapacity({ grid, sums, firstBefore }: Prepared, capacityKg: number): CapacityProblem {
  return { grid, sums, firstBefore, capacityKg: capacityKg * (1 + NOISE) };
}

type Prepared = Omit<CapacityProblem, 'capacityKg'>;

const prepared = new WeakMap<SupportGrid, Prepared & { readonly line: LoadLine }>();

function prepare(grid: SupportGrid, line: LoadLine) {
  const count = grid.allowed.length;
  const places = new Float64Array(count);
  const firstBefore = new Int32Array(count);
  let first = 0;
  for (let place = 0; place < count; place++) {
    places[place] = grid.first + place * grid.step;
    while (first < place && grid.reach[first]! < place) first++;
    firstBefore[place] = first;
  }
  const problem = { grid, line, sums: loadSums(line, places), firstBefore };
  prepared.set(grid, problem);
  return problem;
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
