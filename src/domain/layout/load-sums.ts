import type { Length } from '../units/length.ts';
import type { LoadLine } from './load-line.ts';

/** Running totals of a load line at some places: kg up to and with each place, and their moment about the line's start. */
export interface LoadSums {
  readonly at: readonly Length[];
  readonly kg: Float64Array;
  readonly moment: Float64Array;
  readonly start: Length;
  readonly total: number;
}

/** Sums the line once, from its start, at places in ascending order that lie on it. */
export function loadSums(line: LoadLine, at: readonly Length[]): LoadSums {
  const kg = new Float64Array(at.length);
  const moment = new Float64Array(at.length);
  let weight = 0;
  let turning = 0;
  let span = 0;
  let done = line.from;
  let point = 0;
  const upTo = (place: Length) => {
    for (let piece = line.spans[span]; piece !== undefined && piece.from < place; piece = line.spans[span]) {
      const from = Math.max(done, piece.from);
      const to = Math.min(place, piece.to);
      const load = (to - from) * piece.kgPerUnit;
      weight += load;
      turning += load * ((from + to) / 2 - line.from);
      done = to;
      if (piece.to > place) break;
      span++;
    }
    for (let load = line.points[point]; load !== undefined && load.at <= place; load = line.points[++point]) {
      weight += load.kg;
      turning += load.kg * (load.at - line.from);
    }
  };
  at.forEach((place, index) => {
    upTo(place);
    kg[index] = weight;
    moment[index] = turning;
  });
  upTo(line.to);
  return { at, kg, moment, start: line.from, total: weight };
}

/** What the span between two places puts on its far end, by the lever rule; a load at the far end rests on it wholly. */
export function onFarEnd(sums: LoadSums, near: number, far: number): number {
  const from = sums.at[near]!;
  const load = sums.kg[far]! - sums.kg[near]!;
  const moment = sums.moment[far]! - sums.moment[near]!;
  return (moment - load * (from - sums.start)) / (sums.at[far]! - from);
}

/** What the span between two places puts on its near end; a load at the near end is not the span's. */
export function onNearEnd(sums: LoadSums, near: number, far: number): number {
  return sums.kg[far]! - sums.kg[near]! - onFarEnd(sums, near, far);
}
