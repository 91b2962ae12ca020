import { type CapacityProblem, overhangAfter } from './capacity-problem.ts';
import type { SupportColumns } from './support-columns.ts';

/** More than any sum of squared gaps in steps, which is no more than the pairs that are held at most. */
export const UNREACHED = 2 ** 30;

/**
 * How a layout goes on from each row: followers nearest first, each better than all before it. A way has the share of its span
 * that rests on the row's place (never falling), the squared gaps that follow with it (falling), and the follower's row.
 */
export interface WaysOn {
  /** The ways of a row have the numbers from `from` up to `to`. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  ways: Ways;
  count: number;
}

interface Ways {
  readonly shares: Float64Array;
  readonly sums: Int32Array;
  readonly rows: Int32Array;
}

/** The row of a way that ends: the place is the last. */
export const END = -1;

interface Search extends WaysOn {
  readonly problem: CapacityProblem;
  readonly columns: SupportColumns;
  /** No sum above this is looked at. */
  readonly most: number;
  /** By row: the least of its ways. */
  readonly least: Int32Array;
  /** By row: its ways up to here have room before every place that was asked about. */
  readonly held: Int32Array;
}

/** The rows of a column that have ways, and the least of these. */
interface Live {
  readonly first: number;
  readonly end: number;
  readonly least: number;
}

/** From the last column to the first; null when no row of a column has a way. Each pair within reach is looked at once. */
export function waysOn(problem: CapacityProblem, columns: SupportColumns, most: number): WaysOn | null {
  const rows = columns.starts[columns.count]!;
  const [from, to, held] = [new Int32Array(rows), new Int32Array(rows), new Int32Array(rows)];
  const least = new Int32Array(rows).fill(UNREACHED);
  const search: Search = { problem, columns, most, from, to, held, least, ways: kept, count: 0 };
  let live: Live | null = endHere(search);
  for (let column = columns.count - 2; column >= 0 && live !== null; column--) live = goOn(search, column, live);
  if (search.ways.sums.length <= MOST_KEPT) kept = search.ways;
  return live === null ? null : search;
}

/** The best way of a row for which there is room; END for none. */
export function bestWay({ from, to, ways }: WaysOn, row: number, room: number): number {
  let way = to[row]! - 1;
  while (way >= from[row]! && ways.shares[way]! > room) way--;
  return way < from[row]! ? END : way;
}

function endHere(search: Search): Live {
  const { problem, columns, from, to, held, least } = search;
  const first = columns.starts[columns.count - 1]!;
  const end = columns.starts[columns.count]!;
  makeRoom(search, end - first);
  for (let row = first; row < end; row++) {
    from[row] = search.count;
    search.ways.shares[search.count] = overhangAfter(problem, columns.places[row]!);
    search.ways.sums[search.count] = 0;
    search.ways.rows[search.count++] = END;
    to[row] = search.count;
    held[row] = search.count;
    least[row] = 0;
  }
  return { first, end, least: 0 };
}

function goOn(search: Search, column: number, next: Live): Live | null {
  const { columns, from, to, held, least } = search;
  const { starts, places } = columns;
  let low = next.end;
  let [first, end, smallest] = [0, 0, UNREACHED];
  for (let row = starts[column + 1]! - 1; row >= starts[column]!; row--) {
    while (low > next.first && places[low - 1]! > places[row]!) low--;
    const most = search.most - leastUpTo(columns, column, row);
    if (most < leastFrom(columns, column, row)) continue;
    makeRoom(search, next.end - low);
    from[row] = search.count;
    addWays(search, row, low, next, most);
    to[row] = search.count;
    held[row] = search.count;
    if (search.count === from[row]!) continue;
    least[row] = search.ways.sums[search.count - 1]!;
    first = row;
    if (end === 0) end = row + 1;
    if (least[row]! < smallest) smallest = least[row]!;
  }
  return end === 0 ? null : { first, end, least: smallest };
}

/** The squared gaps up to a row are least when they are equal (Cauchy and Schwarz): its distance squared over their number. */
function leastUpTo({ starts, places }: SupportColumns, column: number, row: number): number {
  const distance = places[row]! - places[starts[1]! - 1]!;
  return distance > 0 && column > 0 ? Math.ceil((distance * distance) / column) : 0;
}

/** The same of what follows, as far as the first place that may be the last. */
function leastFrom({ count, starts, places }: SupportColumns, column: number, row: number): number {
  const distance = places[starts[count - 1]!]! - places[row]!;
  return distance > 0 ? Math.ceil((distance * distance) / (count - 1 - column)) : 0;
}

/** The innermost loop: the share is that of `onFarEnd`, written out. */
function addWays(search: Search, row: number, low: number, next: Live, most: number): void {
  const { problem, columns, least, held, from, ways } = search;
  const { end, least: smallest } = next;
  const { places, nearest } = columns;
  const { shares, sums, rows } = ways;
  const { at, kg, moment } = problem.sums;
  const place = places[row]!;
  const farthest = columns.farthest[row]!;
  const atHere = at[place]!;
  const kgHere = kg[place]!;
  const momentHere = moment[place]!;
  const room = problem.capacityKg;
  let best = most + 1;
  let share = 0;
  let count = search.count;
  for (let follower = low; follower < end; follower++) {
    const to = places[follower]!;
    const square = (to - place) * (to - place);
    if (to > farthest || square + smallest >= best) break;
    if (square + least[follower]! >= best || nearest[follower]! > place) continue;
    const load = kg[to]! - kgHere;
    const onFollower = (moment[to]! - momentHere - load * atHere) / (at[to]! - atHere);
    const left = room - onFollower;
    const first = from[follower]!;
    let way = held[follower]!;
    // The farther a place is before its follower, the less room there is: who had none for a nearer one has none.
    while (way > first && shares[way - 1]! > left) way--;
    held[follower] = way;
    if (way === first || square + sums[way - 1]! >= best) continue;
    best = square + sums[way - 1]!;
    if (load - onFollower > share) share = load - onFollower;
    shares[count] = share;
    sums[count] = best;
    rows[count++] = follower;
  }
  search.count = count;
}

/** A search leaves its arrays to the next, unless they are uncommonly large: fresh memory costs as much as filling it. */
const MOST_KEPT = 1_000_000;
let kept = waysFor(16_384);

function waysFor(count: number): Ways {
  return { shares: new Float64Array(count), sums: new Int32Array(count), rows: new Int32Array(count) };
}

function makeRoom(search: WaysOn, more: number): void {
  const { ways, count } = search;
  if (count + more <= ways.sums.length) return;
  const larger = waysFor(2 * (count + more));
  larger.shares.set(ways.shares);
  larger.sums.set(ways.sums);
  larger.rows.set(ways.rows);
  search.ways = larger;
}
