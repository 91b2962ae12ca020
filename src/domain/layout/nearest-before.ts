import {
  type CapacityProblem,
  overhangAfter,
  overhangBefore,
  shareFromAfter,
  shareFromBefore,
} from './capacity-problem.ts';

/**
 * For each place the first place that the support before it may take, so that this one and all that must follow hold; a place
 * that stands for itself has none. With the one before nearer, less comes from that span, so any place from there on does.
 */
export type NearestBefore = Int32Array;

/**
 * How near the support before must stand, however many follow; null when no layout holds. One pass from the far end: what a
 * place takes of the span after it grows with that span, so the nearest follower that itself holds leaves the most room.
 */
export function nearestBefore(problem: CapacityProblem): NearestBefore | null {
  const { allowed, latestFirst } = problem.grid;
  const nearest = noneBefore(allowed.length);
  const followers = noFollowers(allowed.length);
  let startHolds = false;
  let guess = { place: 0, nearest: 0 };
  for (let place = allowed.length - 1; place >= 0; place--) {
    if (allowed[place] === 0) continue;
    const room = problem.capacityKg - leastAfter(problem, place, nearestFollower(followers, place));
    // Who cannot be followed from here cannot be followed from farther away.
    if (room === Number.NEGATIVE_INFINITY) break;
    const found = firstWithin(problem, place, room, guess.nearest + place - guess.place);
    guess = { place, nearest: found };
    nearest[place] = found;
    startHolds ||= place <= latestFirst && overhangBefore(problem, place) <= room;
    addFollower(followers, place, found);
  }
  return startHolds ? nearest : null;
}

/** How near the support before must stand for at most so many supports to follow, by that number; and who may be the first. */
export interface HoldingLayers {
  readonly layers: readonly Layer[];
  /** First supports from which as few as possible follow: one less than there are layers. Ascending. */
  readonly starts: readonly number[];
  readonly unlimited: NearestBefore;
}

/** Below `from` nothing holds with so few; above the last value more supports change nothing. */
interface Layer {
  readonly from: number;
  readonly nearest: NearestBefore;
}

/** Layers from none following up to as many as a first support needs. Only places that one more support can help are looked at. */
export function holdingLayers(problem: CapacityProblem, unlimited: NearestBefore): HoldingLayers {
  const { allowed, latestFirst } = problem.grid;
  const nearest = noneBefore(allowed.length);
  const layers: Layer[] = [];
  let highest = allowed.length - 1;
  let lowest = problem.grid.earliestLast;
  while (layers.length <= allowed.length) {
    const starts = addLayer(problem, nearest, { lowest, highest, isFirst: layers.length === 0 });
    layers.push({ from: lowest, nearest: nearest.slice(lowest, highest + 1) });
    if (starts.length > 0) return { layers, starts, unlimited };
    for (let place = highest; place >= lowest; place--) lowest = Math.min(lowest, nearest[place]!);
    while (highest > latestFirst && nearest[highest] === unlimited[highest]) highest--;
  }
  throw new Error('more supports than places were asked for, though a layout had been found');
}

/** What `nearest` says of a place when at most `count` supports may follow it. */
export function nearestWith({ layers, unlimited }: HoldingLayers, count: number, place: number): number {
  const layer = layers[count]!;
  if (place < layer.from) return place;
  return layer.nearest[place - layer.from] ?? unlimited[place]!;
}

interface Active {
  readonly lowest: number;
  readonly highest: number;
  readonly isFirst: boolean;
}

/** One more support for the places in hand, from the far end; the first supports that then hold. */
function addLayer(problem: CapacityProblem, nearest: NearestBefore, { lowest, highest, isFirst }: Active): number[] {
  const { allowed, latestFirst, reach } = problem.grid;
  const followers = noFollowers(highest - lowest + reach[highest]! + 1);
  if (!isFirst) for (let next = reach[highest]!; next > highest; next--) addFollower(followers, next, nearest[next]!);
  const starts: number[] = [];
  let guess = { place: 0, nearest: 0 };
  for (let place = highest; place >= lowest; place--) {
    if (allowed[place] === 0) continue;
    const room = problem.capacityKg - leastAfter(problem, place, nearestFollower(followers, place));
    const before = nearest[place]!;
    if (room >= 0) {
      const found = firstWithin(problem, place, room, guess.nearest + place - guess.place);
      guess = { place, nearest: found };
      nearest[place] = Math.min(before, found);
      if (place <= latestFirst && overhangBefore(problem, place) <= room) starts.push(place);
    }
    if (!isFirst) addFollower(followers, place, before);
  }
  return starts.reverse();
}

/** The least that a place can take of what comes after it: of the span to its nearest follower, or of the end. */
function leastAfter(problem: CapacityProblem, place: number, follower: number | null): number {
  const end = overhangAfter(problem, place);
  return follower === null ? end : Math.min(end, shareFromAfter(problem, place, follower));
}

/** Followers met from the far end, the nearest on top; one that is too far from a place is too far from all before it. */
interface Followers {
  readonly places: Int32Array;
  readonly nearest: Int32Array;
  count: number;
}

function noFollowers(most: number): Followers {
  return { places: new Int32Array(most), nearest: new Int32Array(most), count: 0 };
}

function addFollower(followers: Followers, place: number, nearest: number): void {
  if (nearest === place) return;
  followers.places[followers.count] = place;
  followers.nearest[followers.count++] = nearest;
}

function nearestFollower(followers: Followers, place: number): number | null {
  while (followers.count > 0 && followers.nearest[followers.count - 1]! > place) followers.count--;
  return followers.count === 0 ? null : followers.places[followers.count - 1]!;
}

/** The first place within reach from which a place takes no more than there is room for; itself when there is none. */
function firstWithin(problem: CapacityProblem, place: number, room: number, guess: number): number {
  const first = problem.firstBefore[place]!;
  let [low, high] = [first, place];
  // Doubling steps from the neighbour's answer, which is seldom far off, then halving.
  let at = Math.min(Math.max(guess, first), place - 1);
  for (let step = 1; at >= low && at < high; step *= 2) {
    if (shareFromBefore(problem, at, place) <= room) {
      high = at;
      if (low > first) break;
      at = Math.max(low, at - step);
    } else {
      low = at + 1;
      if (high < place) break;
      at = Math.min(place - 1, at + step);
    }
  }
  while (low < high) {
    const middle = (low + high) >> 1;
    if (shareFromBefore(problem, middle, place) <= room) high = middle;
    else low = middle + 1;
  }
  return low;
}

function noneBefore(count: number): NearestBefore {
  return Int32Array.from({ length: count }, (_, place) => place);
}
