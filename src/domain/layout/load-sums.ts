import type { Length } from '../units/length.ts';
import type { LoadLine } from './load-line.ts';

/** Running totals of a load line at some places: kg up to and with each place, and their moment about the line's start. */
export interface LoadSums {
  /** Distances of the places from the line's start. */
  readonly at: Float64Array;
  readonly kg: Float64Array;
  readonly moment: Float64Array;
  readonly total: number;
}

/** Sums the line once, from its start, at places in ascending order that lie on it. */
export function loadSums(line: LoadLine, places: ArrayLike<Length>): LoadSums {
  const count = places.length;
  const sums = { at: new Float64Array(count), kg: new Float64Array(count), moment: new Float64Array(count) };
  const sweep = { kg: 0, moment: 0, span: 0, point: 0, done: line.from };
  for (let index = 0; index < count; index++) {
    const place = places[index]!;
    sweepTo(line, sweep, place);
    sums.at[index] = place - line.from;
    sums.kg[index] = sweep.kg;
    sums.moment[index] = sweep.moment;
  }
  sweepTo(line, sweep, line.to);
  return { ...sums, total: sweep.kg };
}

/** How far a line has been summed. */
interface Sweep {
  kg: number;
  moment: number;
  span: number;
  point: number;
  done: Length;
}

function sweepTo(line: LoadLine, sweep: Sweep, place: Length): void {
  for (let piece = line.spans[sweep.span]; piece !== undefined && piece.from < place; piece = line.spans[sweep.span]) {
    const from = Math.max(sweep.done, piece.from);
    const to = Math.min(place, piece.to);
    const load = (to - from) * piece.kgPerUnit;
    sweep.kg += load;
    sweep.moment += load * ((from + to) / 2 - line.from);
    sweep.done = to;
    if (piece.to > place) break;
    sweep.span++;
  }
  for (let load = line.points[sweep.point]; load !== undefined && load.at <= place; ) {
    sweep.kg += load.kg;
    sweep.moment += load.kg * (load.at - line.from);
    load = line.points[++sweep.point];
  }
}

/** What the span between two places puts on its far end, by the lever rule; a load at the far end rests on it wholly. */
export function onFarEnd({ at, kg, moment }: LoadSums, near: number, far: number): number {
  const from = at[near]!;
  return (moment[far]! - moment[near]! - (kg[far]! - kg[near]!) * from) / (at[far]! - from);
}

/** What the span between two places puts on its near end; a load at the near end is not the span's. */
export function onNearEnd(sums: LoadSums, near: number, far: number): number {
  return sums.kg[far]! - sums.kg[near]! - onFarEnd(sums, near, far);
}
