import type { Finding } from '../finding.ts';
import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { LayoutContext } from './context-for.ts';
import { runGeometry } from './geometry.ts';
import { placeFittings } from './place-fittings.ts';
import type { RunLayout } from './result.ts';
import { type Say, sayIn } from './say.ts';
import { sheetName } from './sheet-name.ts';
import { supportBars, supportWindows } from './support-bars.ts';
import type { SupportBar, SupportLimits, SupportSetting, SupportWindow } from './support-grid.ts';
import { supportLimits } from './support-limits.ts';
import { type SupportStretch, supportStretches } from './support-stretches.ts';

/**
 * Supports as somebody set or wants them (distances along the run, 1/80 mm) against the rules that the layout holds: clearances,
 * spacing, overhang and the distance from fittings. Each stop says the number, what is needed and the nearest legal places.
 * A run whose spacing or overhang is unknown is judged by its clearances alone.
 */
export function judgeSupports(
  run: Run,
  context: LayoutContext,
  layout: RunLayout,
  supports: readonly Length[],
): readonly Finding[] {
  if (!layout.ok) return [];
  const say = sayIn(context.project.units);
  const geometry = runGeometry(run, context.parent);
  const fittings = placeFittings(run, geometry, context).placed;
  const setting: SupportSetting = { run, type: context.type, pieces: layout.pieces, fittings, joints: layout.joints };
  const at = [...supports].sort((a, b) => a - b);
  const stop = ({ rule, place, message }: Fault): Finding => {
    return { rule, severity: 'stop', run: run.id, at: place, message, source: sheetName(context.type) };
  };
  const { limits } = supportLimits(run, context.type, context.project, say);
  const spaced =
    limits === null
      ? []
      : supportStretches(geometry, fittings, layout.length).flatMap((stretch) =>
          spacing(setting, limits, stretch, at, say),
        );
  return [...clearances(setting, layout.length, at, say), ...spaced].map(stop);
}

interface Fault {
  readonly rule: 'support.joint-clear' | 'support.blocked' | 'support.spacing';
  readonly place: Length;
  readonly message: string;
}

function clearances(setting: SupportSetting, length: Length, supports: readonly Length[], say: Say): Fault[] {
  const bars = supportBars(setting);
  return supports.flatMap((place) => {
    const bar = bars.find(covers(place));
    if (bar === undefined) return [];
    const message = `A hanger at ${say(place)} ${barWords(bar, place, say)}. ${legalWords(bars, place, length, say)}`;
    return [
      { rule: bar.kind === 'joint' ? ('support.joint-clear' as const) : ('support.blocked' as const), place, message },
    ];
  });
}

function covers(place: Length): (bar: SupportBar) => boolean {
  return (bar) => bar.from < place && place < bar.to;
}

function barWords({ kind, from, to, reason }: SupportBar, place: Length, say: Say): string {
  const centre = (from + to) / 2;
  switch (kind) {
    case 'joint':
      return `is ${say(Math.abs(place - centre))} from the joint at ${say(centre)} and needs ${say((to - from) / 2)}`;
    case 'crossing':
      return `is within ${say(from)} to ${say(to)}, kept free for the ${reason}`;
    case 'zone':
      return `is within ${say(from)} to ${say(to)}, blocked${reason === null ? '' : ` by ${reason}`}`;
  }
}

function legalWords(bars: readonly SupportBar[], place: Length, length: Length, say: Say): string {
  let [below, above] = [place, place];
  for (let bar = bars.find(covers(below)); bar !== undefined; bar = bars.find(covers(below)))
    below = Math.floor(bar.from);
  for (let bar = bars.find(covers(above)); bar !== undefined; bar = bars.find(covers(above))) above = Math.ceil(bar.to);
  const words = [...(below >= 0 ? [`up to ${say(below)}`] : []), ...(above <= length ? [`from ${say(above)}`] : [])];
  return words.length === 0 ? 'No place beside it is legal.' : `Legal: ${words.join(' or ')}.`;
}

function spacing(
  setting: SupportSetting,
  limits: SupportLimits,
  stretch: SupportStretch,
  supports: readonly Length[],
  say: Say,
): Fault[] {
  const here = supports.filter((place) => place >= stretch.from && place <= stretch.to);
  const gaps = here.slice(1).flatMap((place, index): Fault[] => {
    const before = here[index] ?? place;
    if (place - before <= limits.maxSpacing) return [];
    const message =
      `Hangers at ${say(before)} and ${say(place)} are ${say(place - before)} apart and may be ${say(limits.maxSpacing)}: ` +
      `set another between ${say(place - limits.maxSpacing)} and ${say(before + limits.maxSpacing)}.`;
    return [{ rule: 'support.spacing', place, message }];
  });
  const windows = supportWindows(setting, limits, stretch).filter(
    (window) => !here.some((place) => place >= window.from && place <= window.to),
  );
  return [...gaps, ...windows.map((window) => windowFault(window, say))];
}

function windowFault(window: SupportWindow, say: Say): Fault {
  const why = {
    start: 'the greatest end overhang',
    end: 'the greatest end overhang',
    fitting: 'the greatest distance from a fitting',
  }[window.kind];
  const message = `No hanger from ${say(window.from)} to ${say(window.to)}, where ${why} asks for one: set one there.`;
  return { rule: 'support.spacing', place: window.from, message };
}
