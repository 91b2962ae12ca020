import { type CapacityProblem, overhangAfter, overhangBefore, shareFromAfter } from './capacity-problem.ts';
import { addFollower, nearestFollower, noFollowers } from './followers.ts';
import { firstWithin } from './within-room.ts';

/**
 * For each place the first place that the support before it may take, so that this one and all that must follow hold; a place
 * that stands for itself has none. With the one before nearer, less comes from that span, so any place from there on does.
 */
export interface NearestBefore {
  readonly nearest: Int32Array;
  /** The nearest place that may follow and itself holds, or `NONE`: the rest follows from it. */
  readonly follower: Int32Array;
}

/** No place: nothing follows. */
export const NONE = -1;

/**
 * How near the support before must stand, however many follow; null when no layout holds. One pass from the far end: what a
 * place takes of the span after it grows with that span, so the nearest follower that itself holds leaves the most room.
 */
export function nearestBefore(problem: CapacityProblem): NearestBefore | null {
  const { allowed, latestFirst } = problem.grid;
  const nearest = noneBefore(allowed.length);
  const follower = new Int32Array(allowed.length).fill(NONE);
  const followers = noFollowers(allowed.length);
  let startHolds = false;
  let ahead = 0;
  for (let place = allowed.length - 1; place >= 0; place--) {
    if (allowed[place] === 0) continue;
    const next = nearestFollower(followers, place);
    const room = roomBefore(problem, place, next);
    // Who cannot be followed from here cannot be followed from farther away.
    if (room === Number.NEGATIVE_INFINITY) break;
    const found = firstWithin(problem, place, room, place - ahead);
    ahead = place - found;
    nearest[place] = found;
    follower[place] = next;
    startHolds ||= place <= latestFirst && overhangBefore(problem, place) <= room;
    addFollower(followers, place, found);
  }
  return startHolds ? { nearest, follower } : null;
}

/** What a place can carry of the span before it: it takes the least of what comes after, of the span to its follower or of the end. */
export function roomBefore(problem: CapacityProblem, place: number, follower: number): number {
  const end = overhangAfter(problem, place);
  const least = follower === NONE ? end : Math.min(end, shareFromAfter(problem, place, follower));
  return problem.capacityKg - least;
}

export function noneBefore(count: number): Int32Array {
  const nearest = new Int32Array(count);
  for (let place = 0; place < count; place++) nearest[place] = place;
  return nearest;
}
