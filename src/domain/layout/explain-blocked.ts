import type { Length } from '../units/length.ts';
import type { Blocked } from './fewest-supports.ts';
import { listed, type Say } from './say.ts';
import type { SupportBar, SupportGrid, SupportLimits, SupportSetting, SupportWindow } from './support-grid.ts';
import type { SupportStretch } from './support-stretches.ts';

export interface BlockedPlace {
  readonly at: Length;
  readonly message: string;
}

interface Situation {
  readonly setting: SupportSetting;
  readonly limits: SupportLimits;
  readonly stretch: SupportStretch;
  readonly grid: SupportGrid;
  readonly bars: readonly SupportBar[];
  readonly windows: readonly SupportWindow[];
}

/** Where the hangers come to a halt, what blocks them, the nearest legal places either side, and what would make an answer. */
export function explainBlocked(situation: Situation, blocked: Blocked, say: Say): BlockedPlace {
  const { grid, stretch, limits } = situation;
  const placeAt = (place: number) => grid.first + place * grid.step;
  const last = blocked.after === null ? null : placeAt(blocked.after);
  const nextPlace = grid.allowed.indexOf(1, (blocked.after ?? -1) + 1);
  const next = nextPlace < 0 ? null : placeAt(nextPlace);
  const empty = emptyWindow(situation, last);
  if (empty !== null) return { at: empty.from, message: windowWords(situation, empty, last, next, say) };
  const [from, to] = [last ?? stretch.from, next ?? stretch.to];
  const message =
    `No legal hanger between ${say(from)} and ${say(to)}: ${say(to - from)} is more than the ${say(limits.maxSpacing)} that ` +
    `the spacing allows (${reasons(situation, from, to, say)}). Bridge it with a trapeze or strut from ${say(from)} to ` +
    `${say(to)} that carries a hanger in between, or reroute the run or what blocks it.`;
  return { at: from, message };
}

/** A window within reach of the last hanger that no place serves; it, not the spacing, is then what bars the way. */
function emptyWindow({ grid, windows, limits }: Situation, last: Length | null): SupportWindow | null {
  const inReach = (window: SupportWindow) =>
    last === null || (window.from > last && window.to <= last + limits.maxSpacing);
  const isEmpty = (window: SupportWindow) => {
    const from = Math.max(0, Math.ceil((window.from - grid.first) / grid.step));
    const to = Math.floor((window.to - grid.first) / grid.step);
    const place = grid.allowed.indexOf(1, from);
    return place < 0 || place > to;
  };
  const empty = windows.filter((window) => inReach(window) && isEmpty(window));
  return empty.reduce<SupportWindow | null>(
    (best, window) => (best === null || window.to < best.to ? window : best),
    null,
  );
}

function windowWords(
  situation: Situation,
  window: SupportWindow,
  last: Length | null,
  next: Length | null,
  say: Say,
): string {
  const asked = {
    start: `the end overhang asks for one within ${say(situation.limits.maxEndOverhang)} of ${say(situation.stretch.from)}`,
    end: `the end overhang asks for one within ${say(situation.limits.maxEndOverhang)} of ${say(situation.stretch.to)}`,
    fitting: `the sheet asks for one within ${say(window.to - window.from)} of a fitting's face`,
  }[window.kind];
  const beside = [last, next].filter((at) => at !== null).map((at) => say(at));
  const nearest =
    beside.length === 0 ? 'There is no legal place on this stretch' : `Nearest legal: ${beside.join(' and ')}`;
  return (
    `No legal hanger from ${say(window.from)} to ${say(window.to)}, where ${asked} ` +
    `(${reasons(situation, window.from, window.to, say)}). ${nearest}. Bridge it with a trapeze or strut from ` +
    `${say(window.from)} to ${say(window.to)}, shift the joint or the fitting, or reroute what blocks it.`
  );
}

/** What lies in a gap, in the order it is met. */
function reasons(situation: Situation, from: Length, to: Length, say: Say): string {
  const { bars, setting } = situation;
  const inside = bars
    .filter((bar) => bar.to > bar.from && bar.to > from && bar.from < to)
    .sort((a, b) => a.from - b.from);
  const words = inside.map((bar) => `${barName(bar)} ${say(Math.max(bar.from, 0))} to ${say(bar.to)}`);
  if (setting.run.structure.kind === 'grid') words.push(`structure every ${say(setting.run.structure.pitch)}`);
  return words.length === 0 ? `hangers stand on multiples of ${say(situation.grid.step)}` : listed([...new Set(words)]);
}

function barName({ kind, reason }: SupportBar): string {
  switch (kind) {
    case 'zone':
      return `blocked${reason === null ? '' : ` by ${reason}`}`;
    case 'crossing':
      return `${reason} clearance`;
    case 'joint':
      return 'joint clearance';
  }
}
