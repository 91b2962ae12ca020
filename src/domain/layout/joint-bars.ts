import type { BuswayType, Run, Tap } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { Say } from './say.ts';

/** An open interval that no joint's centre may stand in; at either end a joint passes. Half units occur: a wall may be odd. */
export interface JointBar {
  readonly kind: 'crossing' | 'zone' | 'tap';
  readonly from: number;
  readonly to: number;
  /** "the wall at 39'-0\"", "tap T7 (fixed) at 40'-3\"". */
  readonly name: string;
  /** For a fixed tap: who it is and where it stands, so that a move can be offered. */
  readonly tap: { readonly id: string; readonly at: Length; readonly clear: Length } | null;
}

/** A tap with its distance along the run. */
export interface TapPlace {
  readonly tap: Tap;
  readonly at: Length;
}

/** Everything that keeps joints away: crossings with their clearance, no-joint zones, and the clearances of fixed taps. */
export function jointBars(run: Run, type: BuswayType, taps: readonly TapPlace[], say: Say): readonly JointBar[] {
  const clear = type.tap.jointClear;
  return [
    ...run.crossings.map((crossing): JointBar => {
      const half = crossing.thickness / 2 + (type.crossing.jointClear ?? 0);
      const name = `the ${crossing.kind} at ${say(crossing.at)}`;
      return { kind: 'crossing', from: crossing.at - half, to: crossing.at + half, name, tap: null };
    }),
    ...run.noJoint.map((zone): JointBar => {
      const name = `the no-joint zone ${zone.reason === null ? '' : `(${zone.reason}) `}at ${say(zone.from)}`;
      return { kind: 'zone', from: zone.from, to: zone.to, name, tap: null };
    }),
    ...(clear === null ? [] : taps.filter(({ tap }) => tap.fixed).map((place) => tapBar(place, clear, say))),
  ];
}

export function tapBar({ tap, at }: TapPlace, clear: Length, say: Say): JointBar {
  const name = `tap ${tap.id} (fixed) at ${say(at)}`;
  return { kind: 'tap', from: at - clear, to: at + clear, name, tap: { id: tap.id, at, clear } };
}

/** Whether any of the bars keeps a joint away from a place, by halving. */
export function jointBarTest(bars: readonly JointBar[]): (at: Length) => boolean {
  const merged: { from: number; to: number }[] = [];
  for (const { from, to } of bars.filter((bar) => bar.to > bar.from).sort((a, b) => a.from - b.from)) {
    const last = merged.at(-1);
    // Two open intervals that only touch leave the place between them free.
    if (last === undefined || from >= last.to) merged.push({ from, to });
    else last.to = Math.max(last.to, to);
  }
  return (at) => {
    let [low, high] = [0, merged.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (merged[middle]!.from < at) low = middle + 1;
      else high = middle;
    }
    return low > 0 && at < merged[low - 1]!.to;
  };
}

/** The first bar that keeps a joint away from a place, by its name. */
export function barAt(bars: readonly JointBar[], at: Length): JointBar | null {
  for (const bar of bars) if (bar.from < at && at < bar.to) return bar;
  return null;
}

/** The nearest places either side of a barred joint that no bar reaches: whole 1/80 mm. */
export function freePlaces(bars: readonly JointBar[], at: Length): { readonly below: Length; readonly above: Length } {
  let below = at;
  let above = at;
  for (let bar = barAt(bars, below); bar !== null; bar = barAt(bars, below)) below = Math.floor(bar.from);
  for (let bar = barAt(bars, above); bar !== null; bar = barAt(bars, above)) above = Math.ceil(bar.to);
  return { below, above };
}
