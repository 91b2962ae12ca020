import { type CapacityProblem, overhangBefore } from './capacity-problem.ts';
import { addFollower, type Followers, nearestFollower, noFollowers } from './followers.ts';
import { type NearestBefore, NONE, noneBefore, roomBefore } from './nearest-before.ts';
import { firstWithin } from './within-room.ts';

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
  readonly nearest: Int32Array;
}

/** Layers from none following up to as many as a first support needs. Only places that one more support can help are looked at. */
export function holdingLayers(problem: CapacityProblem, unlimited: NearestBefore): HoldingLayers {
  const { allowed, latestFirst, earliestLast } = problem.grid;
  const nearest = noneBefore(allowed.length);
  const followers = noFollowers(allowed.length);
  const tried = new Int32Array(allowed.length).fill(UNTRIED);
  const layers: Layer[] = [];
  let highest = allowed.length - 1;
  let lowest = earliestLast;
  while (layers.length <= allowed.length) {
    const added = addLayer(
      problem,
      { nearest, unlimited, followers, tried },
      { lowest, highest, isFirst: layers.length === 0 },
    );
    layers.push({ from: lowest, nearest: nearest.slice(lowest, highest + 1) });
    if (added.starts.length > 0) return { layers, starts: added.starts.reverse(), unlimited };
    lowest = added.lowest;
    while (highest > latestFirst && nearest[highest] === unlimited.nearest[highest]) highest--;
  }
  throw new Error('more supports than places were asked for, though a layout had been found');
}

/** What `nearest` says of a place when at most `count` supports may follow it. */
export function nearestWith({ layers, unlimited }: HoldingLayers, count: number, place: number): number {
  const { from, nearest } = layers[count]!;
  if (place < from) return place;
  return place - from < nearest.length ? nearest[place - from]! : unlimited.nearest[place]!;
}

interface Known {
  readonly nearest: Int32Array;
  readonly unlimited: NearestBefore;
  /** Emptied for each layer. */
  readonly followers: Followers;
  /** By place the follower that it was last tried with: the same again changes nothing. */
  readonly tried: Int32Array;
}

interface Active {
  readonly lowest: number;
  readonly highest: number;
  readonly isFirst: boolean;
}

const UNTRIED = -2;

/** One more support for the places in hand, from the far end; the first supports that then hold, and the lowest place before one. */
function addLayer(problem: CapacityProblem, known: Known, { lowest, highest, isFirst }: Active) {
  const { allowed, reach } = problem.grid;
  const { nearest, followers, tried } = known;
  followers.count = 0;
  if (!isFirst) for (let next = reach[highest]!; next > highest; next--) addFollower(followers, next, nearest[next]!);
  const starts: number[] = [];
  let lowestBefore = lowest;
  let ahead = 0;
  for (let place = highest; place >= lowest; place--) {
    if (allowed[place] === 0) continue;
    const next = nearestFollower(followers, place);
    const before = nearest[place]!;
    if (!isFirst) addFollower(followers, place, before);
    if (next === tried[place] || (next === NONE && !isFirst)) continue;
    tried[place] = next;
    if (isStart(problem, place, next)) starts.push(place);
    const found = nearestFor(problem, known.unlimited, { place, next, guess: place - ahead });
    ahead = place - found;
    if (found < before) nearest[place] = found;
    if (found < lowestBefore) lowestBefore = found;
  }
  return { starts, lowest: lowestBefore };
}

function isStart(problem: CapacityProblem, place: number, next: number): boolean {
  return place <= problem.grid.latestFirst && overhangBefore(problem, place) <= roomBefore(problem, place, next);
}

interface Tried {
  readonly place: number;
  readonly next: number;
  readonly guess: number;
}

/** How near the one before must stand when this one follows; itself where not even that holds. */
function nearestFor(problem: CapacityProblem, unlimited: NearestBefore, { place, next, guess }: Tried): number {
  if (next === unlimited.follower[place]) return unlimited.nearest[place]!;
  return firstWithin(problem, place, roomBefore(problem, place, next), guess);
}
