import type { Length } from '../units/length.ts';
import { neighbourReach, type TapSetting } from './tap-rules.ts';

/** The nearest legal places either side of a tap; null where there is none on the run. */
export interface LegalPlaces {
  readonly below: Length | null;
  readonly above: Length | null;
}

interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * Finds the nearest places that nothing bars for one tap among all of a run's, given in ascending order. Within its own reach a
 * tap is looked at without its own bar; beyond it, the union of everything barred is walked by halving.
 */
export function tapRoom({ type, length }: TapSetting, standing: readonly Interval[], taps: readonly Length[]) {
  const reach = neighbourReach(type);
  const around = (at: Length): Interval => ({ from: at - reach, to: at + reach });
  const all = merged([...standing, ...taps.map(around)]);
  const legalFor = (rank: number): LegalPlaces => {
    const at = taps[rank] ?? 0;
    const own = around(at);
    const near = [...standing, ...neighbours(taps, rank, 2 * reach).map(around)].filter(
      (bar) => bar.from <= own.to && bar.to >= own.from,
    );
    const start = Math.min(Math.max(at, 0), length);
    const bars = merged(near);
    const below = slide(start, bars, own, all, (bar) => Math.floor(bar.from));
    const above = slide(start, bars, own, all, (bar) => Math.ceil(bar.to));
    return { below: below >= 0 ? below : null, above: above <= length ? above : null };
  };
  return { legalFor };
}

/** Of two equally near, the one nearer the feed. */
export function nearestOf(at: Length, { below, above }: LegalPlaces): Length | null {
  if (below === null || above === null) return below ?? above;
  return Math.abs(at - below) <= Math.abs(above - at) ? below : above;
}

/** Slides from bar to bar: within the tap's own reach of what is near without it, outside of everything. */
function slide(
  start: Length,
  near: readonly Interval[],
  own: Interval,
  all: readonly Interval[],
  past: (bar: Interval) => number,
): number {
  let place = start;
  for (;;) {
    const isOutside = place <= own.from || place >= own.to;
    const bar = covering(isOutside ? all : near, place);
    if (bar === null) return place;
    place = past(bar);
  }
}

/** Open intervals as few open intervals: two that only touch stay two, for the place between them is free. */
function merged(bars: readonly Interval[]): Interval[] {
  const out: { from: number; to: number }[] = [];
  for (const { from, to } of bars.filter((bar) => bar.to > bar.from).sort((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last === undefined || from >= last.to) out.push({ from, to });
    else last.to = Math.max(last.to, to);
  }
  return out;
}

/** The interval that covers a place, by halving. */
function covering(bars: readonly Interval[], at: number): Interval | null {
  let [low, high] = [0, bars.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (bars[middle]!.from < at) low = middle + 1;
    else high = middle;
  }
  const bar = bars[low - 1];
  return bar !== undefined && at < bar.to ? bar : null;
}

/** Other taps within a distance of one, from their places in order. */
function neighbours(taps: readonly Length[], rank: number, within: Length): Length[] {
  const at = taps[rank] ?? 0;
  const found: Length[] = [];
  for (let i = rank - 1; i >= 0 && at - taps[i]! <= within; i--) found.push(taps[i]!);
  for (let i = rank + 1; i < taps.length && taps[i]! - at <= within; i++) found.push(taps[i]!);
  return found;
}
