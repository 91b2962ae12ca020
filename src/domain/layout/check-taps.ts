import type { Finding } from '../finding.ts';
import type { Length } from '../units/length.ts';
import type { TapPlace } from './joint-bars.ts';
import { type LegalPlaces, nearestOf, tapRoom } from './legal-tap-places.ts';
import type { PlacedTap } from './result.ts';
import type { Say } from './say.ts';
import { sheetName } from './sheet-name.ts';
import { neighbourBar, standingBars, type TapBar, type TapSetting } from './tap-rules.ts';

export interface CheckedTaps {
  readonly taps: readonly PlacedTap[];
  readonly findings: readonly Finding[];
}

/**
 * Checks every tap against the chosen covering and against its neighbours. Each stop says the number, what is needed and the
 * nearest legal places on both sides; a pair that stands too close is reported once, at the tap farther from the feed.
 */
export function checkTaps(setting: TapSetting, places: readonly TapPlace[], say: Say): CheckedTaps {
  const standing = standingBars(setting, say);
  const order = places.map((_, index) => index).sort((a, b) => placeOf(places, a) - placeOf(places, b) || a - b);
  const room = tapRoom(
    setting,
    standing,
    order.map((index) => placeOf(places, index)),
  );
  const taps: PlacedTap[] = places.map(({ tap, at }) => ({ id: tap.id, at, nearestLegal: null }));
  const findings: Finding[] = [];
  order.forEach((index, rank) => {
    const place = places[index]!;
    const [before, after] = [places[order[rank - 1]!], places[order[rank + 1]!]];
    const isBar = (bar: TapBar | null): bar is TapBar => bar !== null && bar.from < place.at && place.at < bar.to;
    const crowding = [before && neighbourBar(setting.type, before, say)]
      .filter((bar) => bar !== undefined)
      .filter(isBar);
    const barred = [...firstOfEachRule(standing.filter(isBar)), ...crowding];
    const isCrowded = after !== undefined && isBar(neighbourBar(setting.type, after, say));
    if (barred.length === 0 && !isCrowded) return;
    const legal = room.legalFor(rank);
    taps[index] = { id: place.tap.id, at: place.at, nearestLegal: nearestOf(place.at, legal) };
    findings.push(...barred.map((bar) => finding(setting, place, bar, legal, say)));
  });
  return { taps, findings };
}

function placeOf(places: readonly TapPlace[], index: number): Length {
  return places[index]?.at ?? 0;
}

function firstOfEachRule(barred: readonly TapBar[]): TapBar[] {
  const seen = new Set<string>();
  return barred.filter((bar) => !seen.has(bar.rule) && seen.add(bar.rule));
}

function finding(setting: TapSetting, place: TapPlace, bar: TapBar, legal: LegalPlaces, say: Say): Finding {
  const { run, type } = setting;
  const advice = placeAdvice(place.at, legal, say);
  const message = `Tap ${place.tap.id} at ${say(place.at)}: ${bar.say(place.at)}. ${advice}`;
  return { rule: bar.rule, severity: 'stop', run: run.id, at: place.at, message, source: sheetName(type) };
}

/** Where a tap at `at` may stand instead. */
export function placeAdvice(at: Length, legal: LegalPlaces, say: Say): string {
  const where = [...new Set([legal.below, legal.above])]
    .filter((place) => place !== null)
    .map((place) => `${say(place)} (${say(Math.abs(place - at))} ${place < at ? 'back' : 'on'})`);
  if (where.length === 0) return 'No place on this run is legal for it; move other taps or shift the joints.';
  return `Nearest legal place${where.length > 1 ? 's' : ''}: ${where.join(' or ')}.`;
}
