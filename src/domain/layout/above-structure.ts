import type { Finding } from '../finding.ts';
import type { Level, Run } from '../model.ts';
import { pointAt, type RunGeometry } from './geometry.ts';
import type { Say } from './say.ts';

/**
 * A warning where a level leg runs above the structure that it hangs from: heights count from the level's floor, as the
 * level's structure height does. Past a floor that the run crosses it is another level's, and a branch hangs at its parent's.
 */
export function aboveStructure(run: Run, level: Level | null, geometry: RunGeometry, say: Say): readonly Finding[] {
  const deck = level?.structureHeight ?? null;
  if (deck === null || run.feed.kind === 'tee') return [];
  const floor = run.crossings.find((crossing) => crossing.kind === 'floor')?.at ?? Number.POSITIVE_INFINITY;
  const leg = geometry.legs.find(({ vertical, from }) => !vertical && from < floor && pointAt(geometry, from).z > deck);
  if (leg === undefined) return [];
  const height = pointAt(geometry, leg.from).z;
  const message =
    `The centre of the run is ${say(height)} above the floor from ${say(leg.from)} on, and the structure of ${level?.name} is at ` +
    `${say(deck)}: ${say(height - deck)} too high. Lower the run, or correct the structure's height.`;
  return [
    {
      rule: 'run.above-structure',
      severity: 'warning',
      run: run.id,
      at: leg.from,
      message,
      source: 'the level as entered',
    },
  ];
}
