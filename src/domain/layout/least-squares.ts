import { type CapacityProblem, overhangBefore } from './capacity-problem.ts';
import { onFarEnd } from './load-sums.ts';
import { type SupportColumns, thinned } from './support-columns.ts';
import { bestWay, END, UNREACHED, type WaysOn, waysOn } from './ways-on.ts';

/** Columns with fewer rows on the average are searched at once. */
const FEW_ROWS = 12;
const EVERY = 3;

/**
 * One place of each column so that every support holds: the least sum of squared gaps, then the smallest list; null when none
 * holds. Exact. What follows a place depends on the one before it only by the room that is left, so each place keeps its ways on
 * by the room they need (`waysOn`), and no pair is looked at twice.
 *
 * A choice among every third place comes first. It is seldom far off, and whatever adds up to more is left out of the search
 * among all places; where it finds nothing, nothing is left out.
 */
export function leastSquares(problem: CapacityProblem, columns: SupportColumns): readonly number[] | null {
  const isLarge = columns.starts[columns.count]! >= FEW_ROWS * columns.count;
  const rough = isLarge ? bestUpTo(problem, thinned(columns, EVERY), UNREACHED - 1) : null;
  const most = rough === null ? UNREACHED - 1 : squaresOf(rough);
  // Rounding at the capacity may hide from one pass what another took.
  return bestUpTo(problem, columns, most) ?? rough;
}

function squaresOf(places: readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < places.length; i++) sum += (places[i]! - places[i - 1]!) ** 2;
  return sum;
}

/** The best choice, unless its squared gaps add up to more than `most`. */
function bestUpTo(problem: CapacityProblem, columns: SupportColumns, most: number): readonly number[] | null {
  const found = waysOn(problem, columns, most);
  return found === null ? null : walk(problem, columns, found);
}

/** From the best start along the best ways; of equally good ones always the nearest, which makes the smallest list. */
function walk(problem: CapacityProblem, { places, starts }: SupportColumns, found: WaysOn): readonly number[] | null {
  let row = END;
  let way = END;
  for (let start = 0; start < starts[1]!; start++) {
    const held = bestWay(found, start, problem.capacityKg - overhangBefore(problem, places[start]!));
    if (held === END || (way !== END && found.ways.sums[held]! >= found.ways.sums[way]!)) continue;
    [row, way] = [start, held];
  }
  if (way === END) return null;
  const chosen = [places[row]!];
  for (let next = found.ways.rows[way]!; next !== END; next = found.ways.rows[way]!) {
    way = bestWay(found, next, problem.capacityKg - onFarEnd(problem.sums, places[row]!, places[next]!));
    row = next;
    chosen.push(places[row]!);
  }
  return chosen;
}
