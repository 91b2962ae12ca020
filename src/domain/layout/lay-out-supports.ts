import type { Finding } from '../finding.ts';
import type { Project } from '../model.ts';
import type { Length } from '../units/length.ts';
import { explainBlocked } from './explain-blocked.ts';
import { fewestSupports } from './fewest-supports.ts';
import type { RunGeometry } from './geometry.ts';
import { heldSupports } from './held-supports.ts';
import { clipped, type LoadLine } from './load-line.ts';
import { loadedSupports } from './loaded-supports.ts';
import type { PlacedSupport } from './result.ts';
import type { Say } from './say.ts';
import { sheetName } from './sheet-name.ts';
import { supportBars, supportWindows } from './support-bars.ts';
import { continuousOverload, noLayoutHolds, simpleOverload, tooManyPlaces } from './support-findings.ts';
import {
  latticeOf,
  MOST_PLACES,
  type SupportGrid,
  type SupportLimits,
  type SupportSetting,
  supportGrid,
} from './support-grid.ts';
import { supportLimits } from './support-limits.ts';
import { type SupportStretch, supportStretches } from './support-stretches.ts';

export interface LaidSupports {
  readonly supports: readonly PlacedSupport[];
  readonly findings: readonly Finding[];
}

/**
 * The supports of a run: on each horizontal stretch fewest, then most even, then the smallest list, every one within its
 * capacity by simple spans. A stop on one stretch leaves the run without supports: half a layout is none.
 *
 * `standing` are hangers that the floor has: those that are still legal stay, and as few as possible are set beside them. One
 * that no other is reached from goes; a stretch that does not carry its load with them is laid out without.
 */
export function layOutSupports(
  setting: SupportSetting,
  geometry: RunGeometry,
  project: Project,
  line: LoadLine,
  say: Say,
  standing: readonly Length[] = [],
): LaidSupports {
  const { limits, findings } = supportLimits(setting.run, setting.type, project, say);
  const riser = riserNote(setting, geometry, say);
  if (limits === null) return { supports: [], findings: [...findings, ...riser] };
  const stretches = supportStretches(geometry, setting.fittings, line.to);
  const laid = stretches.map((stretch) => layOutStretch(setting, limits, stretch, line, say, standing));
  const all = [...findings, ...riser, ...laid.flatMap((stretch) => stretch.findings)];
  const whole = laid.every((stretch) => stretch.supports.length > 0);
  const supports = whole ? laid.flatMap((stretch) => stretch.supports) : [];
  return { supports, findings: [...all, ...fittingNotes(setting, supports, say)] };
}

/** No rule keeps a support off a fitting, but not every sheet has a hanger for one. */
function fittingNotes(
  { run, type, fittings }: SupportSetting,
  supports: readonly PlacedSupport[],
  say: Say,
): Finding[] {
  return fittings.flatMap(({ from, to, kind }) =>
    supports
      .filter(({ at }) => from < at && at < to)
      .map(({ at }) => ({
        rule: 'support.on-fitting',
        severity: 'note' as const,
        run: run.id,
        at,
        message: `The hanger at ${say(at)} stands on the ${kind} from ${say(from)} to ${say(to)}: see on the sheet that one may, or block the ${kind} for hangers.`,
        source: sheetName(type),
      })),
  );
}

function riserNote({ run, type }: SupportSetting, geometry: RunGeometry, say: Say): Finding[] {
  const risers = geometry.legs.filter((leg) => leg.vertical);
  return risers.map((leg) => ({
    rule: 'support.riser',
    severity: 'note' as const,
    run: run.id,
    at: leg.from,
    message: `The vertical leg from ${say(leg.from)} to ${say(leg.to)} takes the riser's own supports, which are not laid out here: use those of the sheet.`,
    source: sheetName(type),
  }));
}

function layOutStretch(
  setting: SupportSetting,
  limits: SupportLimits,
  stretch: SupportStretch,
  runLine: LoadLine,
  say: Say,
  standing: readonly Length[],
): LaidSupports {
  const { run, type } = setting;
  if (latticeOf(run, type, stretch).count > MOST_PLACES) {
    return { supports: [], findings: [tooManyPlaces(setting, stretch, say)] };
  }
  const bars = supportBars(setting);
  const windows = supportWindows(setting, limits, stretch);
  const line = clipped(runLine, stretch.loadFrom, stretch.loadTo);
  const grid = supportGrid(setting, limits, stretch, bars, windows);
  const kept = besideStanding({ setting, limits, stretch, bars, windows, line, say }, grid, standing);
  if (kept !== null) return kept;
  const choice = fewestSupports(grid);
  if (!choice.ok) {
    const { at, message } = explainBlocked({ setting, limits, stretch, grid, bars, windows }, choice.blocked, say);
    const stop = {
      rule: 'support.blocked',
      severity: 'stop' as const,
      run: run.id,
      at,
      message,
      source: sheetName(type),
    };
    return { supports: [], findings: [stop] };
  }
  return withinCapacity(setting, grid, line, choice.places, say);
}

interface Beside {
  readonly setting: SupportSetting;
  readonly limits: SupportLimits;
  readonly stretch: SupportStretch;
  readonly bars: ReturnType<typeof supportBars>;
  readonly windows: ReturnType<typeof supportWindows>;
  readonly line: LoadLine;
  readonly say: Say;
}

/** The stretch with its standing hangers left where they are; one after the other goes that nothing is reached from. Null: none stays. */
function besideStanding(beside: Beside, grid: SupportGrid, standing: readonly Length[]): LaidSupports | null {
  const { setting, limits, stretch, bars, windows, line, say } = beside;
  let staying = standing.filter((at) => isPlace(grid, at));
  while (staying.length > 0) {
    // A window without width: no step passes over it, so a hanger stands in it.
    const asked = [...windows, ...staying.map((at) => ({ from: at, to: at }))];
    const around = supportGrid(setting, limits, stretch, bars, asked);
    const choice = fewestSupports(around);
    if (choice.ok) {
      const laid = withinCapacity(setting, around, line, choice.places, say);
      return laid.findings.length === 0 ? laid : null;
    }
    const reached = grid.first + (choice.blocked.after ?? 0) * grid.step;
    const nearest = Math.min(...staying.map((at) => Math.abs(at - reached)));
    staying = staying.filter((at) => Math.abs(at - reached) !== nearest);
  }
  return null;
}

function isPlace({ first, step, allowed }: SupportGrid, at: Length): boolean {
  const place = (at - first) / step;
  return Number.isInteger(place) && allowed[place] === 1;
}

/** The capacity is looked at only where the winner without it does not hold. */
function withinCapacity(
  setting: SupportSetting,
  grid: SupportGrid,
  line: LoadLine,
  places: readonly number[],
  say: Say,
): LaidSupports {
  const capacity = setting.run.supportCapacityKg;
  const held = heldSupports(grid, line, places, capacity);
  if (held !== null && held !== 'too-many') {
    return checked(setting, grid, line, loadedSupports(grid, line, held), say);
  }
  if (capacity === null) throw new Error('supports without a capacity were found too weak');
  const winner = loadedSupports(grid, line, places);
  const finding =
    held === null
      ? noLayoutHolds(setting, grid, line, winner, capacity, say)
      : simpleOverload(setting, winner, capacity, say);
  return { supports: [], findings: [finding] };
}

/** The continuous beam, worked for the winner: above the capacity it is a stop, with what a lower one would give. */
function checked(
  setting: SupportSetting,
  grid: SupportGrid,
  line: LoadLine,
  supports: readonly PlacedSupport[],
  say: Say,
): LaidSupports {
  const capacity = setting.run.supportCapacityKg;
  const greatest = Math.max(...supports.map((support) => support.continuousLoadKg));
  if (capacity === null || greatest <= capacity * (1 + 1e-9)) return { supports, findings: [] };
  return { supports, findings: [continuousOverload(setting, grid, line, supports, capacity, say)] };
}
