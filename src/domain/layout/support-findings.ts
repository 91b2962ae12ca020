import type { Finding } from '../finding.ts';
import type { LoadLine } from './load-line.ts';
import { loadedSupports } from './loaded-supports.ts';
import type { PlacedSupport } from './result.ts';
import type { Say } from './say.ts';
import type { SupportGrid, SupportSetting } from './support-grid.ts';
import type { SupportStretch } from './support-stretches.ts';
import { leastCapacity, MOST_PAIRS, pairsOf, supportsByLoad } from './supports-by-load.ts';

const SIMPLE = 'statics of simple spans, lever rule; the capacity is the one entered for this run';
const CONTINUOUS = 'three-moment equation over the chosen hangers; the capacity is the one entered for this run';

/** No layout keeps every hanger within the capacity; how much it would have to be is worked out, to 0.1 kg. */
export function noLayoutHolds(
  setting: SupportSetting,
  grid: SupportGrid,
  line: LoadLine,
  winner: readonly PlacedSupport[],
  capacityKg: number,
  say: Say,
): Finding {
  const heaviest = heaviestOf(winner, (support) => support.loadKg);
  const needed = leastCapacity(grid, line, capacityKg, heaviest.loadKg);
  const message =
    `No layout of hangers keeps each within ${kg(capacityKg)} by simple spans: without that limit ${winner.length} hangers would do, ` +
    `the one at ${say(heaviest.at)} carrying ${kg(heaviest.loadKg)}; the least capacity that any legal layout needs is ` +
    `${kg(needed)}. Use hangers of at least that capacity, free more places for hangers, or take load off the run.`;
  return stop(setting, heaviest.at, message, SIMPLE);
}

/** The step is too fine to search pairs of hangers: refused, not guessed. */
export function simpleOverload(
  setting: SupportSetting,
  winner: readonly PlacedSupport[],
  capacityKg: number,
  say: Say,
): Finding {
  const heaviest = heaviestOf(winner, (support) => support.loadKg);
  const message =
    `The hanger at ${say(heaviest.at)} would carry ${kg(heaviest.loadKg)} by simple spans, above ${kg(capacityKg)}, and a hanger ` +
    `step of ${say(setting.type.support.step)} is too fine to search this run for a layout within the capacity: use a coarser step.`;
  return stop(setting, heaviest.at, message, SIMPLE);
}

/** The winner holds by simple spans and not as a continuous beam; the search is run again at the capacity lowered in that ratio. */
export function continuousOverload(
  setting: SupportSetting,
  grid: SupportGrid,
  line: LoadLine,
  supports: readonly PlacedSupport[],
  capacityKg: number,
  say: Say,
): Finding {
  const heaviest = heaviestOf(supports, (support) => support.continuousLoadKg);
  const lowered = (capacityKg * capacityKg) / heaviest.continuousLoadKg;
  const message =
    `As a continuous beam the hanger at ${say(heaviest.at)} carries ${kg(heaviest.continuousLoadKg)}, above ${kg(capacityKg)} ` +
    `(${kg(heaviest.loadKg)} by simple spans). Searched again at ${kg(lowered)} by simple spans: ` +
    `${secondSearch(grid, line, lowered, capacityKg)}.`;
  return stop(setting, heaviest.at, message, CONTINUOUS);
}

export function tooManyPlaces(setting: SupportSetting, stretch: SupportStretch, say: Say): Finding {
  const message =
    `A hanger step of ${say(setting.type.support.step)} over ${say(stretch.to - stretch.from)} makes too many places to search: ` +
    `use a coarser step.`;
  return { ...stop(setting, stretch.from, message, SIMPLE), rule: 'support.blocked' };
}

function secondSearch(grid: SupportGrid, line: LoadLine, loweredKg: number, capacityKg: number): string {
  if (pairsOf(grid) > MOST_PAIRS) return 'the hanger step is too fine for that search; use a coarser step';
  const places = supportsByLoad(grid, line, loweredKg);
  if (places === null) return 'no layout holds; use hangers of a greater capacity or take load off the run';
  const again = loadedSupports(grid, line, places);
  const greatest = heaviestOf(again, (support) => support.continuousLoadKg).continuousLoadKg;
  const found = `${again.length} hangers, the greatest continuous load ${kg(greatest)}`;
  if (greatest > capacityKg) return `${found}, which does not hold either; use hangers of a greater capacity`;
  return `${found}; enter that capacity${greatest > loweredKg ? ', or a lower one if this stop stays,' : ''} to take them`;
}

function heaviestOf(supports: readonly PlacedSupport[], load: (support: PlacedSupport) => number): PlacedSupport {
  return supports.reduce((most, support) => (load(support) > load(most) ? support : most));
}

function stop(setting: SupportSetting, at: number, message: string, source: string): Finding {
  return { rule: 'support.load', severity: 'stop', run: setting.run.id, at, message, source };
}

function kg(value: number): string {
  return `${value.toFixed(1)} kg`;
}
