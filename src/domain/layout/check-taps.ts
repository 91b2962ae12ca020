import type { Finding } from '../finding.ts';
import type { Length } from '../units/length.ts';
import type { TapPlace } from './joint-bars.ts';
import type { PlacedTap } from './result.ts';
import type { Say } from './say.ts';
import { sheetName } from './sheet-name.ts';
import { neighbourBars, standingBars, type TapBar, type TapSetting } from './tap-rules.ts';

export interface CheckedTaps {
  readonly taps: readonly PlacedTap[];
  readonly findings: readonly Finding[];
}

/**
 * Checks every tap against the chosen covering and against its neighbours. Each stop says the number, what is needed and the
 * nearest legal places on both sides; a pair that stands too close is reported at the tap farther from the feed.
 */
export function checkTaps(setting: TapSetting, places: readonly TapPlace[], say: Say): CheckedTaps {
  const standing = standingBars(setting, say);
  const around = places.map((place) => neighbourBars(setting.type, place, say));
  const checked = places.map((place, index) => {
    const isBar = bars(place.at);
    const neighbours = around.map((theirs, other) => (other === index ? [] : theirs.filter(isBar)));
    const isEarlier = (other: number) => comesBefore(places, other, index);
    const barred = [...standing.filter(isBar), ...neighbours.filter((_, other) => isEarlier(other)).flat()];
    if (barred.length === 0 && neighbours.every((theirs) => theirs.length === 0)) return sound(place);
    const all = [...standing, ...around.filter((_, other) => other !== index).flat()];
    const legal = legalPlaces(place.at, all, setting.length);
    return {
      tap: { id: place.tap.id, at: place.at, nearestLegal: nearest(place.at, legal) },
      findings: strongest(barred).map((bar) => finding(setting, place, bar, legal, say)),
    };
  });
  return { taps: checked.map(({ tap }) => tap), findings: checked.flatMap(({ findings }) => findings) };
}

function sound({ tap, at }: TapPlace): { tap: PlacedTap; findings: readonly Finding[] } {
  return { tap: { id: tap.id, at, nearestLegal: null }, findings: [] };
}

function bars(at: Length): (bar: TapBar) => boolean {
  return (bar) => bar.from < at && at < bar.to;
}

/** Nearer the feed, or of two at one place the earlier in the document: so that a pair speaks once. */
function comesBefore(places: readonly TapPlace[], other: number, index: number): boolean {
  const difference = (places[other]?.at ?? 0) - (places[index]?.at ?? 0);
  return difference < 0 || (difference === 0 && other < index);
}

/** One finding for each rule and cause: the first bar that a rule names, and every neighbour that is too close. */
function strongest(barred: readonly TapBar[]): TapBar[] {
  const single = new Set<string>();
  return barred.filter((bar) => bar.rule === 'tap.spacing' || (!single.has(bar.rule) && single.add(bar.rule)));
}

interface Legal {
  readonly below: Length | null;
  readonly above: Length | null;
}

/** The nearest places on the run either side that no bar reaches. */
function legalPlaces(at: Length, all: readonly TapBar[], length: Length): Legal {
  const start = Math.min(Math.max(at, 0), length);
  const below = slide(start, all, (bar) => Math.floor(bar.from));
  const above = slide(start, all, (bar) => Math.ceil(bar.to));
  return { below: below >= 0 ? below : null, above: above <= length ? above : null };
}

function slide(start: Length, all: readonly TapBar[], past: (bar: TapBar) => number): number {
  let at = start;
  for (let bar = all.find(bars(at)); bar !== undefined; bar = all.find(bars(at))) at = past(bar);
  return at;
}

function nearest(at: Length, { below, above }: Legal): Length | null {
  if (below === null || above === null) return below ?? above;
  return Math.abs(at - below) <= Math.abs(above - at) ? below : above;
}

function finding(setting: TapSetting, place: TapPlace, bar: TapBar, legal: Legal, say: Say): Finding {
  const { run, type } = setting;
  const where = [legal.below, legal.above]
    .filter((at) => at !== null)
    .map((at) => `${say(at)} (${say(Math.abs(at - place.at))} ${at < place.at ? 'back' : 'on'})`);
  const advice =
    where.length === 0
      ? 'No place on this run is legal for it; move other taps or shift the joints.'
      : `Nearest legal place${where.length > 1 ? 's' : ''}: ${[...new Set(where)].join(' or ')}.`;
  const message = `Tap ${place.tap.id} at ${say(place.at)}: ${bar.say(place.at)}. ${advice}`;
  return { rule: bar.rule, severity: 'stop', run: run.id, at: place.at, message, source: sheetName(type) };
}
