import type { LoadLine } from './load-line.ts';
import { type LoadSums, loadSums, onFarEnd } from './load-sums.ts';
import type { SupportGrid } from './support-grid.ts';

/** A load at the capacity passes; this much, as a share of it, is only the noise of the sums. */
const NOISE = 1e-9;
/** Pairs of neighbours that are held at most; a finer step than that is refused, not searched in part. */
export const MOST_PAIRS = 8_000_000;
/** One support more outweighs any sum of squared gaps, in steps: that sum is below the number of pairs. */
const ONE_SUPPORT = 2 ** 24;

/**
 * The places that win when every support must also carry its simple-span load: as `fewestSupports`, over pairs of neighbours,
 * since what a support carries follows from the gap before it and the gap after it. Exact; null when no choice holds.
 *
 * The share from the gap before grows with that gap and leaves less for the gap after, whose share grows likewise: what may
 * follow is always a first part of the followers, and running minima over them answer every pair in one pass.
 */
export function supportsByLoad(grid: SupportGrid, line: LoadLine, capacityKg: number): readonly number[] | null {
  const places = Array.from(grid.allowed, (_, place) => grid.first + place * grid.step);
  const search = pairSearch(grid, loadSums(line, places), capacityKg * (1 + NOISE));
  for (let place = grid.allowed.length - 1; place >= 0; place--) solvePlace(search, place);
  return walkPairs(search);
}

/** An upper bound of the pairs of places within reach of each other. */
export function pairsOf(grid: SupportGrid): number {
  const farthest = grid.reach.reduce((most, last, place) => Math.max(most, last - place), 0);
  return grid.allowed.length * (farthest + 1);
}

/** Pairs `i`, `j` of neighbours are kept at `base[j] + i - firstBefore[j]`. */
interface Search {
  readonly grid: SupportGrid;
  readonly sums: LoadSums;
  readonly capacity: number;
  readonly firstBefore: Int32Array;
  readonly base: Int32Array;
  /** The least that follows `j` when `i` stands before it. */
  readonly costs: Float64Array;
  /** What the span from `i` to `j` puts on `j`. */
  readonly shares: Float64Array;
  /** The least that follows a place when it is the first support. */
  readonly starts: Float64Array;
  /** The followers of the place in hand: what each puts on it, growing, and the least cost over those up to it. */
  readonly followers: { readonly shares: Float64Array; readonly least: Float64Array };
}

function pairSearch(grid: SupportGrid, sums: LoadSums, capacity: number): Search {
  const count = grid.allowed.length;
  const firstBefore = new Int32Array(count);
  const base = new Int32Array(count);
  let pairs = 0;
  let first = 0;
  for (let place = 0; place < count; place++) {
    while (first < place && grid.reach[first]! < place) first++;
    firstBefore[place] = first;
    base[place] = pairs;
    pairs += place - first;
  }
  const costs = new Float64Array(pairs).fill(Number.POSITIVE_INFINITY);
  const shares = new Float64Array(pairs);
  const starts = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const followers = { shares: new Float64Array(count), least: new Float64Array(count) };
  return { grid, sums, capacity, firstBefore, base, costs, shares, starts, followers };
}

/** Fills in everything that has `place` as its second support, and as the first of all. */
function solvePlace(search: Search, place: number): void {
  const { grid, sums, base, firstBefore, costs, shares, capacity, followers } = search;
  if (grid.allowed[place] === 0) return;
  const count = gatherFollowers(search, place);
  const pair = base[place]! - firstBefore[place]!;
  for (let before = place - 1, held = count; before >= firstBefore[place]!; before--) {
    if (grid.allowed[before] === 0) continue;
    const share = onFarEnd(sums, before, place);
    shares[pair + before] = share;
    held = holding(followers.shares, held, capacity - share);
    costs[pair + before] = leastOf(search, place, share, held);
  }
  if (place > grid.latestFirst) return;
  const overhang = sums.kg[place]!;
  search.starts[place] = leastOf(search, place, overhang, holding(followers.shares, count, capacity - overhang));
}

/** Lists the followers of a place, nearest first; how many there are. */
function gatherFollowers(search: Search, place: number): number {
  const { grid, followers } = search;
  let count = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let next = place + 1; next <= grid.reach[place]!; next++) {
    if (grid.allowed[next] === 0) continue;
    least = Math.min(least, costOf(search, place, next));
    followers.shares[count] = shareBefore(search, place, next);
    followers.least[count++] = least;
  }
  return count;
}

/** What the span from a place to its follower puts on the place: the rest of that span's load. */
function shareBefore({ sums, base, firstBefore, shares }: Search, place: number, next: number): number {
  return sums.kg[next]! - sums.kg[place]! - shares[base[next]! + place - firstBefore[next]!]!;
}

function costOf({ base, firstBefore, costs }: Search, place: number, next: number): number {
  const gap = next - place;
  return ONE_SUPPORT + gap * gap + costs[base[next]! + place - firstBefore[next]!]!;
}

/** How many of the first `count` shares fit into the room that is left. */
function holding(shares: Float64Array, count: number, room: number): number {
  let held = count;
  while (held > 0 && shares[held - 1]! > room) held--;
  return held;
}

function leastOf(search: Search, place: number, share: number, count: number): number {
  if (canBeLast(search, place, share)) return 0;
  return count > 0 ? search.followers.least[count - 1]! : Number.POSITIVE_INFINITY;
}

/** The last support carries the whole overhang after it. */
function canBeLast({ grid, sums, capacity }: Search, place: number, share: number): boolean {
  return place >= grid.earliestLast && share + sums.total - sums.kg[place]! <= capacity;
}

function walkPairs(search: Search): readonly number[] | null {
  const { starts, sums } = search;
  let place = 0;
  starts.forEach((cost, start) => {
    if (cost < starts[place]!) place = start;
  });
  let cost = starts[place]!;
  if (cost === undefined || cost === Number.POSITIVE_INFINITY) return null;
  let share = sums.kg[place]!;
  const places = [place];
  while (!canBeLast(search, place, share)) {
    const next = nextOf(search, place, share, cost);
    cost -= ONE_SUPPORT + (next - place) ** 2;
    share = onFarEnd(sums, place, next);
    place = next;
    places.push(place);
  }
  return places;
}

function nextOf(search: Search, place: number, share: number, cost: number): number {
  const { grid, capacity } = search;
  for (let next = place + 1; next <= grid.reach[place]!; next++) {
    if (grid.allowed[next] === 0 || costOf(search, place, next) !== cost) continue;
    if (share + shareBefore(search, place, next) <= capacity) return next;
  }
  throw new Error('the search for supports lost the way that it had found');
}
