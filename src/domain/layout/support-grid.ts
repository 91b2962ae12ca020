import type { BuswayType, Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { PlacedFitting } from './place-fittings.ts';
import type { PlacedPiece } from './result.ts';
import type { SupportStretch } from './support-stretches.ts';

/** What supports are laid out on: the run with its sections and joints. */
export interface SupportSetting {
  readonly run: Run;
  readonly type: BuswayType;
  readonly pieces: readonly PlacedPiece[];
  readonly fittings: readonly PlacedFitting[];
  readonly joints: readonly { readonly at: Length }[];
}

/** The limits that no support is laid out without. */
export interface SupportLimits {
  readonly maxSpacing: Length;
  readonly maxEndOverhang: Length;
}

/** An open interval that no support may stand in. */
export interface SupportBar {
  readonly kind: 'zone' | 'crossing' | 'joint';
  readonly from: number;
  readonly to: number;
  readonly reason: string | null;
}

/** A closed interval that must hold at least one support. */
export interface SupportWindow {
  readonly from: Length;
  readonly to: Length;
  readonly kind: 'start' | 'end' | 'fitting';
}

/**
 * The places of one stretch that a support may take, by number: place `i` is at `first + i·step`. `reach[i]` is the last place
 * that the next support may take after one at `i`; it never falls with `i`.
 */
export interface SupportGrid {
  readonly first: Length;
  readonly step: Length;
  readonly allowed: Uint8Array;
  readonly reach: Int32Array;
  /** The first support stands at or before this place, the last at or after that one. */
  readonly latestFirst: number;
  readonly earliestLast: number;
}

/** More places than this are not searched. */
export const MOST_PLACES = 4_000_000;

/** Number of places on the lattice of a stretch, before anything is barred. */
export function latticeOf(run: Run, type: BuswayType, stretch: SupportStretch) {
  const [step, offset] =
    run.structure.kind === 'grid' ? [run.structure.pitch, run.structure.offset] : [type.support.step, 0];
  const first = offset + Math.ceil((stretch.from - offset) / step) * step;
  return { first, step, count: Math.max(0, Math.floor((stretch.to - first) / step) + 1) };
}

export function supportGrid(
  setting: SupportSetting,
  limits: SupportLimits,
  stretch: SupportStretch,
  bars: readonly SupportBar[],
  windows: readonly Pick<SupportWindow, 'from' | 'to'>[],
): SupportGrid {
  const { first, step, count } = latticeOf(setting.run, setting.type, stretch);
  const atOrBefore = (place: number) => Math.floor((place - first) / step);
  const atOrAfter = (place: number) => Math.ceil((place - first) / step);
  const allowed = new Uint8Array(count).fill(1);
  for (const bar of bars) {
    const from = Math.max(0, atOrBefore(bar.from) + 1);
    const to = Math.min(count, atOrAfter(bar.to));
    if (to > from) allowed.fill(0, from, to);
  }
  return {
    first,
    step,
    allowed,
    reach: reaches(count, Math.floor(limits.maxSpacing / step), windows, atOrBefore, atOrAfter),
    latestFirst: Math.min(count - 1, ...windows.map((window) => atOrBefore(window.to))),
    earliestLast: Math.max(0, ...windows.map((window) => atOrAfter(window.from))),
  };
}

/** Whoever stands before a window must step into it: no step may pass over one. */
function reaches(
  count: number,
  farthest: number,
  windows: readonly Pick<SupportWindow, 'from' | 'to'>[],
  atOrBefore: (place: number) => number,
  atOrAfter: (place: number) => number,
): Int32Array {
  const reach = new Int32Array(count);
  for (let place = 0; place < count; place++) reach[place] = Math.min(count - 1, place + farthest);
  for (const window of windows) {
    const [from, to] = [Math.min(count, atOrAfter(window.from)), atOrBefore(window.to)];
    for (let place = from - 1; place >= 0 && reach[place]! > to; place--) reach[place] = to;
  }
  return reach;
}
