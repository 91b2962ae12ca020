import type { CapacityProblem } from './capacity-problem.ts';

// The shares are those of `onFarEnd` and `onNearEnd`, written out: these are the innermost loops of the search.

/**
 * The first place within reach from which a place takes no more than there is room for; itself when there is none. Doubling
 * steps from a guess, which the neighbour's answer makes a good one, then halving.
 */
export function firstWithin(
  { sums, firstBefore }: CapacityProblem,
  place: number,
  room: number,
  guess: number,
): number {
  const { at, kg, moment } = sums;
  const atHere = at[place]!;
  const kgHere = kg[place]!;
  const momentHere = moment[place]!;
  const first = firstBefore[place]!;
  let low = first;
  let high = place;
  let try_ = Math.min(Math.max(guess, first), place - 1);
  let step = 1;
  while (low < high) {
    const from = at[try_]!;
    const share = (momentHere - moment[try_]! - (kgHere - kg[try_]!) * from) / (atHere - from);
    if (share <= room) {
      high = try_;
      try_ = low > first ? (low + high) >> 1 : Math.max(first, high - step);
    } else {
      low = try_ + 1;
      try_ = high < place ? (low + high) >> 1 : Math.min(place - 1, low - 1 + step);
    }
    step += step;
  }
  return low;
}

/** The last place within reach of a place that leaves no more on it than there is room for; itself when there is none. */
export function lastWithin({ sums, grid }: CapacityProblem, place: number, room: number, guess: number): number {
  const { at, kg, moment } = sums;
  const atHere = at[place]!;
  const kgHere = kg[place]!;
  const momentHere = moment[place]!;
  const last = grid.reach[place]!;
  let low = place;
  let high = last;
  let try_ = Math.max(place + 1, Math.min(guess, last));
  let step = 1;
  while (low < high) {
    const load = kg[try_]! - kgHere;
    const share = load - (moment[try_]! - momentHere - load * atHere) / (at[try_]! - atHere);
    if (share <= room) {
      low = try_;
      try_ = high < last ? (low + high + 1) >> 1 : Math.min(last, low + step);
    } else {
      high = try_ - 1;
      try_ = low > place ? (low + high + 1) >> 1 : Math.max(place + 1, high + 1 - step);
    }
    step += step;
  }
  return low;
}
