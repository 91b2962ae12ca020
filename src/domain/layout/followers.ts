/**
 * Who may follow, met from the far end, the nearest on top, each with how near the one before it must stand. One that is too
 * far from a place is too far from all before it, so places must be asked about from the far end too.
 */
export interface Followers {
  readonly places: Int32Array;
  readonly nearest: Int32Array;
  count: number;
}

export function noFollowers(most: number): Followers {
  return { places: new Int32Array(most), nearest: new Int32Array(most), count: 0 };
}

/** A place that holds for nobody before it (`nearest` is itself) is none. */
export function addFollower(followers: Followers, place: number, nearest: number): void {
  if (nearest === place) return;
  followers.places[followers.count] = place;
  followers.nearest[followers.count++] = nearest;
}

/** The nearest follower of a place; −1 when there is none. */
export function nearestFollower(followers: Followers, place: number): number {
  const { nearest } = followers;
  let count = followers.count;
  while (count > 0 && nearest[count - 1]! > place) count--;
  followers.count = count;
  return count === 0 ? -1 : followers.places[count - 1]!;
}
