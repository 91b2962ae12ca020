import { type CapacityProblem, overhangBefore, shareFromAfter, shareFromBefore } from './capacity-problem.ts';
import { type HoldingLayers, nearestWith } from './nearest-before.ts';

/**
 * The places that one support, by number from the first, can take in a layout of as few as hold. Any two neighbours from one
 * column to the next stand in such a layout when the first is at or after the second's `nearest` and the second at or before
 * the first's `farthest`.
 */
export interface SupportColumn {
  readonly places: Int32Array;
  readonly nearest: Int32Array;
  readonly farthest: Int32Array;
}

/** One column a support; every place in them but the last column's stands in a layout that holds. */
export function supportColumns(problem: CapacityProblem, holding: HoldingLayers): readonly SupportColumn[] {
  const columns = [firstColumn(problem, holding)];
  while (columns.length < holding.layers.length) columns.push(nextColumn(problem, holding, columns));
  return columns;
}

function firstColumn(problem: CapacityProblem, { starts }: HoldingLayers): SupportColumn {
  const places = Int32Array.from(starts);
  const farthest = places.map((place) =>
    lastWithin(problem, place, problem.capacityKg - overhangBefore(problem, place), problem.grid.reach[place]!),
  );
  return { places, nearest: places, farthest };
}

function nextColumn(
  problem: CapacityProblem,
  holding: HoldingLayers,
  columns: readonly SupportColumn[],
): SupportColumn {
  const before = columns.at(-1)!;
  const left = holding.layers.length - 1 - columns.length;
  const last = before.farthest.reduce((most, place) => Math.max(most, place), -1);
  const nearest: number[] = [];
  const farthest: number[] = [];
  const places: number[] = [];
  const behind = { rows: new Int32Array(before.places.length), count: 0, met: 0 };
  for (let place = (before.places[0] ?? 0) + 1; place <= last; place++) {
    if (problem.grid.allowed[place] === 0) continue;
    const near = nearestWith(holding, left, place);
    const from = nearestBehind(before, behind, place);
    if (from === null || near > from) continue;
    const room = problem.capacityKg - shareFromBefore(problem, from, place);
    places.push(place);
    nearest.push(near);
    farthest.push(left === 0 ? place : lastWithin(problem, place, room, (farthest.at(-1) ?? place) + 1));
  }
  return { places: Int32Array.from(places), nearest: Int32Array.from(nearest), farthest: Int32Array.from(farthest) };
}

/** Rows of a column met so far, the nearest on top: who cannot reach a place cannot reach one beyond it. */
interface Behind {
  readonly rows: Int32Array;
  count: number;
  met: number;
}

/** The nearest place of the column before from which the span to this one holds. */
function nearestBehind({ places, farthest }: SupportColumn, behind: Behind, place: number): number | null {
  while (behind.met < places.length && places[behind.met]! < place) behind.rows[behind.count++] = behind.met++;
  while (behind.count > 0 && farthest[behind.rows[behind.count - 1]!]! < place) behind.count--;
  return behind.count === 0 ? null : places[behind.rows[behind.count - 1]!]!;
}

/** The last place within reach of a place that leaves no more on it than there is room for; itself when there is none. */
function lastWithin(problem: CapacityProblem, place: number, room: number, guess: number): number {
  const last = problem.grid.reach[place]!;
  let [low, high] = [place, last];
  // Doubling steps from the neighbour's answer, which is seldom far off, then halving.
  let at = Math.max(place + 1, Math.min(guess, last));
  for (let step = 1; at <= high && at > low; step *= 2) {
    if (shareFromAfter(problem, place, at) <= room) {
      low = at;
      if (high < last) break;
      at = Math.min(high, at + step);
    } else {
      high = at - 1;
      if (low > place) break;
      at = Math.max(place + 1, at - step);
    }
  }
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (shareFromAfter(problem, place, middle) <= room) low = middle;
    else high = middle - 1;
  }
  return low;
}
