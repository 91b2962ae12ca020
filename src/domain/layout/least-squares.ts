import {
  type CapacityProblem,
  overhangAfter,
  overhangBefore,
  shareFromAfter,
  shareFromBefore,
} from './capacity-problem.ts';
import type { SupportColumn } from './support-columns.ts';

const NONE = Number.POSITIVE_INFINITY;

/**
 * One place of each column so that every support holds: the least sum of squared gaps, then the smallest list; null when none
 * holds. Over pairs of neighbours, from the far end: the farther a follower, the more it leaves on a place, so the least that
 * follows a pair is over a first part of the followers, and running minima over them answer every pair in one pass.
 *
 * What the sum is at least before and after a place is known from the pairs alone, without what three in a row put on the
 * middle one. A pair is left out when those make more than a layout does that holds.
 */
export function leastSquares(problem: CapacityProblem, columns: readonly SupportColumn[]): readonly number[] | null {
  const after = leastAfter(columns);
  const atHand = followBest(problem, columns, after);
  const most = atHand === null ? NONE : squaresOf(atHand);
  return bestUpTo({ problem, columns, before: leastBefore(columns), after, most }) ?? atHand;
}

function bestUpTo(search: Search): readonly number[] | null {
  const tables = search.columns.slice(1).map((_, index) => tableOf(search, index));
  for (let index = tables.length - 1; index >= 0; index--) fill(search, tables, index);
  return walk(search, tables);
}

interface Search {
  readonly problem: CapacityProblem;
  readonly columns: readonly SupportColumn[];
  /** The sum of squared gaps up to and from each place of each column is at least this. */
  readonly before: readonly Float64Array[];
  readonly after: readonly Float64Array[];
  /** No sum above this is looked at. */
  readonly most: number;
}

function squaresOf(places: readonly number[]): number {
  return places.slice(1).reduce((sum, place, index) => sum + (place - places[index]!) ** 2, 0);
}

function leastAfter(columns: readonly SupportColumn[]): readonly Float64Array[] {
  const least = columns.map((column) => new Float64Array(column.places.length));
  for (let index = columns.length - 2; index >= 0; index--) {
    const [here, next] = [columns[index]!, columns[index + 1]!];
    const [into, from] = [least[index]!, least[index + 1]!];
    let low = 0;
    for (let row = 0; row < here.places.length; row++) {
      const place = here.places[row]!;
      const farthest = here.farthest[row]!;
      while (low < next.places.length && next.places[low]! <= place) low++;
      let best = NONE;
      for (let follower = low; follower < next.places.length && next.places[follower]! <= farthest; follower++) {
        const gap = next.places[follower]! - place;
        const sum = gap * gap + from[follower]!;
        if (sum < best && next.nearest[follower]! <= place) best = sum;
      }
      into[row] = best;
    }
  }
  return least;
}

function leastBefore(columns: readonly SupportColumn[]): readonly Float64Array[] {
  const least = columns.map((column) => new Float64Array(column.places.length));
  for (let index = 1; index < columns.length; index++) {
    const [here, last] = [columns[index]!, columns[index - 1]!];
    const [into, from] = [least[index]!, least[index - 1]!];
    let high = 0;
    for (let row = 0; row < here.places.length; row++) {
      const place = here.places[row]!;
      const nearest = here.nearest[row]!;
      while (high < last.places.length && last.places[high]! < place) high++;
      let best = NONE;
      for (let leader = high - 1; leader >= 0 && last.places[leader]! >= nearest; leader--) {
        const gap = place - last.places[leader]!;
        const sum = gap * gap + from[leader]!;
        if (sum < best && last.farthest[leader]! >= place) best = sum;
      }
      into[row] = best;
    }
  }
  return least;
}

/** A layout that holds, always on to the follower that seems best; null where rounding at the capacity hides it. */
function followBest(
  problem: CapacityProblem,
  columns: readonly SupportColumn[],
  after: readonly Float64Array[],
): readonly number[] | null {
  let row = 0;
  after[0]!.forEach((least, start) => {
    if (least < after[0]![row]!) row = start;
  });
  const places = [columns[0]!.places[row]!];
  let taken = overhangBefore(problem, places[0]!);
  for (let index = 1; index < columns.length; index++) {
    const place = places.at(-1)!;
    const { places: next, nearest } = columns[index]!;
    let best = { follower: -1, sum: NONE };
    for (let follower = 0; follower < next.length; follower++) {
      const to = next[follower]!;
      if (to <= place || nearest[follower]! > place) continue;
      const sum = (to - place) ** 2 + after[index]![follower]!;
      if (sum >= best.sum) continue;
      if (shareFromAfter(problem, place, to) <= problem.capacityKg - taken) best = { follower, sum };
    }
    if (best.follower < 0) return null;
    places.push(next[best.follower]!);
    taken = shareFromBefore(problem, place, places.at(-1)!);
  }
  return taken + overhangAfter(problem, places.at(-1)!) <= problem.capacityKg ? places : null;
}

/** The pairs of one column and the next: for each place a row over the places from `from` up to `to` of the next column. */
interface Table {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly base: Int32Array;
  /** The least that follows the second of a pair. */
  readonly costs: Float64Array;
}

function tableOf({ columns, before, after, most }: Search, index: number): Table {
  const { places, farthest } = columns[index]!;
  const next = columns[index + 1]!;
  const rest = after[index + 1]!;
  const [from, to, base] = [
    new Int32Array(places.length),
    new Int32Array(places.length),
    new Int32Array(places.length),
  ];
  let pairs = 0;
  let low = 0;
  for (let row = 0; row < places.length; row++) {
    const place = places[row]!;
    const room = most - before[index]![row]!;
    while (low < next.places.length && next.places[low]! <= place) low++;
    let [first, end] = [low, low];
    for (let at = low; at < next.places.length && next.places[at]! <= farthest[row]!; at++) {
      const gap = next.places[at]! - place;
      if (next.nearest[at]! > place || gap * gap + rest[at]! > room) continue;
      if (end === low) first = at;
      end = at + 1;
    }
    from[row] = first;
    to[row] = end;
    base[row] = pairs - first;
    pairs += end - first;
  }
  return { from, to, base, costs: new Float64Array(pairs).fill(NONE) };
}

/** The least that follows each pair whose second is support number `index + 1`. */
function fill({ problem, columns }: Search, tables: readonly Table[], index: number): void {
  const { from, to, base, costs } = tables[index]!;
  const { places } = columns[index]!;
  const next = columns[index + 1]!;
  for (let row = 0; row < next.places.length; row++) {
    const place = next.places[row]!;
    let followers: Followers | null = null;
    for (let before = places.length - 1; before >= 0 && places[before]! >= next.nearest[row]!; before--) {
      if (row < from[before]! || row >= to[before]!) continue;
      followers ??= followersOf({ problem, columns }, tables, { index: index + 1, row });
      const room = problem.capacityKg - shareFromBefore(problem, places[before]!, place);
      costs[base[before]! + row] = leastWithin(followers, room);
    }
  }
}

/** A support by number, and its place in that column. */
interface Spot {
  readonly index: number;
  readonly row: number;
}

/** The followers of a place, nearest first: what each leaves on it, never less than the one before, and the least up to it. */
interface Followers {
  readonly first: number;
  readonly shares: Float64Array;
  readonly least: Float64Array;
  /** How many of them there is room for, as far as was asked. */
  held: number;
}

function followersOf(
  { problem, columns }: Pick<Search, 'problem' | 'columns'>,
  tables: readonly Table[],
  { index, row }: Spot,
): Followers {
  const place = columns[index]!.places[row]!;
  const table = tables[index];
  if (table === undefined) {
    const end = Float64Array.of(overhangAfter(problem, place));
    return { first: -1, shares: end, least: Float64Array.of(0), held: 1 };
  }
  const next = columns[index + 1]!.places;
  const first = table.from[row]!;
  const count = table.to[row]! - first;
  const shares = new Float64Array(count);
  const least = new Float64Array(count);
  const base = table.base[row]! + first;
  let [share, cost] = [0, NONE];
  for (let i = 0; i < count; i++) {
    const gap = next[first + i]! - place;
    share = Math.max(share, shareFromAfter(problem, place, next[first + i]!));
    cost = Math.min(cost, gap * gap + table.costs[base + i]!);
    shares[i] = share;
    least[i] = cost;
  }
  return { first, shares, least, held: count };
}

/** The least of the followers that there is room for. Rooms must be asked for from the greatest down. */
function leastWithin(followers: Followers, room: number): number {
  const { shares, least } = followers;
  while (followers.held > 0 && shares[followers.held - 1]! > room) followers.held--;
  return followers.held === 0 ? NONE : least[followers.held - 1]!;
}

/** The nearest follower that makes no more than the least. */
function followerOf({ first, least }: Followers, cost: number): number {
  return first + least.indexOf(cost);
}

/** From the best start along the best followers; of equally good ones always the nearest, which makes the smallest list. */
function walk(search: Search, tables: readonly Table[]): readonly number[] | null {
  const { problem, columns } = search;
  let best = { row: -1, follower: -1, cost: NONE };
  columns[0]!.places.forEach((place, row) => {
    const followers = followersOf(search, tables, { index: 0, row });
    const cost = leastWithin(followers, problem.capacityKg - overhangBefore(problem, place));
    if (cost < best.cost) best = { row, follower: followerOf(followers, cost), cost };
  });
  if (best.row < 0) return null;
  const places = [columns[0]!.places[best.row]!];
  let row = best.follower;
  for (let index = 1; index < columns.length; index++) {
    const place = columns[index]!.places[row]!;
    const room = problem.capacityKg - shareFromBefore(problem, places.at(-1)!, place);
    places.push(place);
    const followers = followersOf(search, tables, { index, row });
    row = followerOf(followers, leastWithin(followers, room));
  }
  return places;
}
