import type { Finding } from '../finding.ts';
import type { Run } from '../model.ts';
import type { ParentRun, RunGeometry } from './geometry.ts';
import { listed, type Say } from './say.ts';

/** What can be laid out as entered and was probably not meant: a warning each, with what to enter instead. */
export function oddEntries(run: Run, geometry: RunGeometry, parent: ParentRun | null, say: Say): readonly Finding[] {
  return [...tapsWithoutStart(run, parent), ...thickWalls(run, geometry, say)];
}

const MOST_NAMED = 3;

/** The plan position of what a tap serves says nothing of a run whose own place is not known: it was measured from the origin. */
function tapsWithoutStart(run: Run, parent: ParentRun | null): Finding[] {
  if (isPlaced(run, parent)) return [];
  const ids = run.taps.filter(({ place }) => 'near' in place).map(({ id }) => id);
  if (ids.length === 0) return [];
  const more = ids.length - MOST_NAMED;
  const named = listed([...ids.slice(0, MOST_NAMED), ...(more > 0 ? [`${more} more`] : [])]);
  const message =
    `${ids.length === 1 ? `Tap ${named} is` : `Taps ${named} are`} placed by the plan position of what ` +
    `${ids.length === 1 ? 'it serves' : 'they serve'}, but the run states no start and was taken to begin at the origin: ` +
    'enter where the run begins, or the distance along it.';
  return [odd(run, 'tap.no-start', null, message)];
}

/** A branch begins at its tee. Of a branch of a branch the parent's own parent is not asked. */
function isPlaced(run: Run, parent: ParentRun | null): boolean {
  if (run.feed.kind !== 'tee') return run.hasStart;
  return parent === null || parent.run.feed.kind === 'tee' || parent.run.hasStart;
}

function thickWalls(run: Run, geometry: RunGeometry, say: Say): Finding[] {
  return run.crossings
    .filter(({ thickness }) => thickness > geometry.length)
    .map(({ at, thickness, kind }) => {
      const message =
        `The ${kind} at ${say(at)} is ${say(thickness)} thick, more than the ${say(geometry.length)} that the run is long: ` +
        'enter its thickness along the run, and look at the unit.';
      return odd(run, 'crossing.thickness', at, message);
    });
}

function odd(run: Run, rule: string, at: number | null, message: string): Finding {
  return { rule, severity: 'warning', run: run.id, at, message, source: 'the run as drawn' };
}
