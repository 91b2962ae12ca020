import type { RunLayout } from '../layout/result.ts';
import type { Level, Run, UnpricedJob } from '../model.ts';
import { linesByRun } from '../takeoff/lines-by-run.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { type Measure, measureRun } from './measure-run.ts';
import { ACTIVITIES, type Activity } from './result.ts';

/** One run with a sound layout and what it gives each activity to do; an activity without work has no measures. */
export interface RunWork {
  readonly run: Run;
  readonly level: Level;
  readonly ratedCurrentA: number;
  readonly measures: Readonly<Record<Activity, readonly Measure[]>>;
}

/** The work of a job, in document order: what its hours are reckoned from, whatever its labour book says. */
export interface Work {
  readonly levels: readonly Level[];
  readonly runs: readonly RunWork[];
  /** Activities with work to do; false where every piece of it has a length, true where some piece has none. */
  readonly lengthless: ReadonlyMap<Activity, boolean>;
}

/**
 * What every run with a sound layout gives each activity to do, counted from the takeoff. It hangs on the layouts alone, so
 * another labour book reckons from the same work.
 */
export function workOf(job: UnpricedJob, layouts: readonly RunLayout[], takeoff: readonly TakeoffLine[]): Work {
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  const levelOf = new Map(job.levels.map((level) => [level.id, level]));
  const currents = new Map(job.types.map(({ id, ratedCurrentA }) => [id, ratedCurrentA]));
  const takeoffOf = linesByRun(takeoff);
  const runs = job.runs.flatMap((run): RunWork[] => {
    const layout = layoutOf.get(run.id);
    if (!layout?.ok) return [];
    const level = levelOf.get(run.level);
    if (!level) throw new Error(`run ${run.id} hangs on level ${run.level}, which the job does not hold`);
    const amperes = currents.get(run.type);
    if (amperes === undefined)
      throw new Error(`run ${run.id} names the busway type ${run.type}, which the job does not hold`);
    return [workAt({ run, level, ratedCurrentA: amperes }, layout, takeoffOf.get(run.id) ?? [])];
  });
  return { levels: job.levels, runs, lengthless: lengthlessOf(runs) };
}

interface Measured {
  readonly lines: readonly TakeoffLine[];
  readonly work: RunWork;
}

/** Work of runs that was measured before from the same lines. */
const measured = new WeakMap<RunLayout, Measured>();

function workAt(of: Omit<RunWork, 'measures'>, layout: RunLayout, lines: readonly TakeoffLine[]): RunWork {
  const known = measured.get(layout);
  const isSame =
    known !== undefined &&
    known.work.run === of.run &&
    known.work.level === of.level &&
    known.work.ratedCurrentA === of.ratedCurrentA &&
    known.lines.length === lines.length &&
    known.lines.every((line, index) => line === lines[index]);
  if (isSame) return known.work;
  const work = { ...of, measures: measureRun(of.run, layout, lines) };
  measured.set(layout, { lines, work });
  return work;
}

function lengthlessOf(runs: readonly RunWork[]): Work['lengthless'] {
  const lengthless = new Map<Activity, boolean>();
  for (const id of ACTIVITIES) {
    const some = runs.filter(({ measures }) => measures[id].length > 0);
    if (some.length === 0) continue;
    lengthless.set(
      id,
      some.some(({ measures }) => measures[id].some(({ length }) => length === null)),
    );
  }
  return lengthless;
}
