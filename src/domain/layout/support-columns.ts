import { type CapacityProblem, overhangBefore, shareFromBefore } from './capacity-problem.ts';
import { type HoldingLayers, nearestWith } from './holding-layers.ts';
import { lastWithin } from './within-room.ts';

/**
 * The places that each support, by number from the first, can take in a layout of as few as hold: one row a place, column after
 * column, ascending. Two neighbours from one column to the next stand in such a layout when the first is at or after the
 * second's `nearest` and the second at or before the first's `farthest`.
 */
export interface SupportColumns {
  readonly count: number;
  /** Column `c` has the rows from `starts[c]` up to `starts[c + 1]`. */
  readonly starts: Int32Array;
  readonly places: Int32Array;
  readonly nearest: Int32Array;
  readonly farthest: Int32Array;
}

/** One column a support; every place in them but the last column's stands in a layout that holds. */
export function supportColumns(problem: CapacityProblem, holding: HoldingLayers): SupportColumns {
  const count = holding.layers.length;
  const columns = { count, starts: new Int32Array(count + 1), ...rowsFor(problem.grid.allowed.length) };
  let growing: Growing = firstColumn(problem, holding, columns);
  const behind = { rows: new Int32Array(problem.grid.allowed.length), count: 0, met: 0 };
  for (let column = 1; column < count; column++) growing = nextColumn(problem, holding, growing, column, behind);
  return growing;
}

type Growing = SupportColumns;

function rowsFor(most: number) {
  return { places: new Int32Array(most), nearest: new Int32Array(most), farthest: new Int32Array(most) };
}

/** The same columns with room for so many rows more. */
function withRoom(columns: SupportColumns, used: number, more: number): SupportColumns {
  if (used + more <= columns.places.length) return columns;
  const rows = rowsFor(2 * (used + more));
  rows.places.set(columns.places);
  rows.nearest.set(columns.nearest);
  rows.farthest.set(columns.farthest);
  return { ...columns, ...rows };
}

function firstColumn(problem: CapacityProblem, { starts }: HoldingLayers, columns: SupportColumns): SupportColumns {
  const { places, nearest, farthest } = columns;
  starts.forEach((place, row) => {
    places[row] = place;
    nearest[row] = place;
    const room = problem.capacityKg - overhangBefore(problem, place);
    farthest[row] = lastWithin(problem, place, room, problem.grid.reach[place]!);
  });
  columns.starts[1] = starts.length;
  return columns;
}

function nextColumn(
  problem: CapacityProblem,
  holding: HoldingLayers,
  columns: SupportColumns,
  column: number,
  behind: Behind,
): SupportColumns {
  const { allowed } = problem.grid;
  const first = columns.starts[column - 1]!;
  const end = columns.starts[column]!;
  const left = columns.count - 1 - column;
  let last = -1;
  for (let row = first; row < end; row++) last = Math.max(last, columns.farthest[row]!);
  const from = (columns.places[first] ?? 0) + 1;
  const grown = withRoom(columns, end, last - from + 1);
  const { places, nearest, farthest } = grown;
  behind.count = 0;
  behind.met = first;
  let row = end;
  let ahead = 1;
  for (let place = from; place <= last; place++) {
    if (allowed[place] === 0) continue;
    const near = nearestWith(holding, left, place);
    if (near === place) continue;
    const before = nearestBehind(grown, behind, end, place);
    if (near > before) continue;
    places[row] = place;
    nearest[row] = near;
    if (left === 0) farthest[row] = place;
    else {
      const room = problem.capacityKg - shareFromBefore(problem, before, place);
      farthest[row] = lastWithin(problem, place, room, place + ahead);
      ahead = farthest[row]! - place + 1;
    }
    row++;
  }
  grown.starts[column + 1] = row;
  return grown;
}

/** Rows of a column met so far, the nearest on top: who cannot reach a place cannot reach one beyond it. */
interface Behind {
  readonly rows: Int32Array;
  count: number;
  met: number;
}

/** The nearest place of the column before (whose rows end at `end`) from which the span to this one holds; −1 for none. */
function nearestBehind({ places, farthest }: SupportColumns, behind: Behind, end: number, place: number): number {
  const { rows } = behind;
  let { count, met } = behind;
  while (met < end && places[met]! < place) rows[count++] = met++;
  while (count > 0 && farthest[rows[count - 1]!]! < place) count--;
  behind.count = count;
  behind.met = met;
  return count === 0 ? -1 : places[rows[count - 1]!]!;
}

/** The same columns with only those places whose number is a multiple of `every`. */
export function thinned(columns: SupportColumns, every: number): SupportColumns {
  const { count, starts } = columns;
  const thin = { count, starts: new Int32Array(count + 1), ...rowsFor(starts[count]!) };
  let kept = 0;
  for (let column = 0; column < count; column++) {
    for (let row = starts[column]!; row < starts[column + 1]!; row++) {
      if (columns.places[row]! % every !== 0) continue;
      thin.places[kept] = columns.places[row]!;
      thin.nearest[kept] = columns.nearest[row]!;
      thin.farthest[kept++] = columns.farthest[row]!;
    }
    thin.starts[column + 1] = kept;
  }
  return thin;
}
