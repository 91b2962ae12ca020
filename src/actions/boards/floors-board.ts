import type { Capability } from '../../domain/access.ts';
import type { EarnedSum } from '../../domain/progress/earned.ts';
import type { Context, Viewer } from '../context.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';
import { type JobProgress, progressOf, type RunStanding, type Tally } from '../progress.ts';

/** Up to so many runs a job is shown whole; past that, one floor at a time. */
const SHOWN_WHOLE = 100;
export const RUNS_A_PAGE = 100;

export interface FloorSum {
  /** null for the whole job. */
  readonly id: string | null;
  readonly key: string;
  readonly name: string;
  readonly runs: number;
  readonly released: number;
  /** Runs whose design has something that keeps it from the floor. */
  readonly barred: number;
  readonly planned: Tally;
  readonly done: Tally;
  readonly hours: Pick<EarnedSum, 'budgetHours' | 'earnedHours'> | null;
}

export interface ShownFloor {
  readonly floor: FloorSum;
  readonly runs: readonly RunStanding[];
  readonly total: number;
  readonly page: number;
}

export interface FloorsBoard {
  readonly heading: JobHeading;
  readonly floors: readonly FloorSum[];
  readonly whole: FloorSum;
  readonly shown: readonly ShownFloor[];
  /** The floor that was asked for, or that a large job is cut to; null when all are shown. */
  readonly chosen: string | null;
  readonly releasable: { readonly fresh: number; readonly changed: number; readonly waiting: readonly RunStanding[] };
}

/** The job by floor: how far each is, its runs, and what can be released. */
export async function floorsBoard(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: { readonly floor: string; readonly page: number },
  capability: Capability = 'read',
): Promise<FloorsBoard> {
  const heading = await jobHeading(context, viewer, projectId, capability);
  const { db } = context.database;
  const [progress, rows] = await Promise.all([
    progressOf(db, projectId),
    db.level.findMany({ where: { projectId }, select: { id: true, key: true } }),
  ]);
  const ids = new Map(rows.map((row) => [row.key, row.id]));
  const floors = floorsOf(progress, ids);
  const whole = sumOf({ id: null, key: '', name: 'Whole job' }, progress.runs);
  const large = progress.runs.length > SHOWN_WHOLE;
  const chosen = floors.find((floor) => floor.key === asked.floor)?.key ?? (large ? (floors[0]?.key ?? null) : null);
  const shown = floors
    .filter((floor) => chosen === null || floor.key === chosen)
    .map((floor) => shownOf(floor, progress.runs, chosen === null ? 1 : asked.page));
  return { heading, floors, whole, shown, chosen, releasable: releasableOf(progress.runs) };
}

/** In the order of work. */
function floorsOf({ design, runs }: JobProgress, ids: ReadonlyMap<string, string>): FloorSum[] {
  const byLevel = new Map<string, RunStanding[]>();
  for (const run of runs) {
    const here = byLevel.get(run.level);
    if (here) here.push(run);
    else byLevel.set(run.level, [run]);
  }
  return [...design.job.levels]
    .sort((a, b) => a.order - b.order)
    .map((level) =>
      sumOf({ id: ids.get(level.id) ?? null, key: level.id, name: level.name }, byLevel.get(level.id) ?? []),
    );
}

function sumOf(named: Pick<FloorSum, 'id' | 'key' | 'name'>, runs: readonly RunStanding[]): FloorSum {
  const hours = runs.flatMap((run) => (run.hours === null ? [] : [run.hours]));
  return {
    ...named,
    runs: runs.length,
    released: runs.filter((run) => run.revision > 0).length,
    barred: runs.filter((run) => run.bars.length > 0).length,
    planned: tally(runs.map((run) => run.planned)),
    done: tally(runs.map((run) => run.done)),
    hours:
      hours.length === 0
        ? null
        : {
            budgetHours: hours.reduce((sum, of) => sum + of.budgetHours, 0),
            earnedHours: hours.reduce((sum, of) => sum + of.earnedHours, 0),
          },
  };
}

function tally(tallies: readonly Tally[]): Tally {
  const sum = (of: (one: Tally) => number) => tallies.reduce((total, one) => total + of(one), 0);
  return {
    pieces: sum((one) => one.pieces),
    joints: sum((one) => one.joints),
    supports: sum((one) => one.supports),
    taps: sum((one) => one.taps),
  };
}

function shownOf(floor: FloorSum, runs: readonly RunStanding[], page: number): ShownFloor {
  const here = runs.filter((run) => run.level === floor.key);
  const first = (page - 1) * RUNS_A_PAGE;
  return { floor, runs: here.slice(first, first + RUNS_A_PAGE), total: here.length, page };
}

function releasableOf(runs: readonly RunStanding[]): FloorsBoard['releasable'] {
  const open = runs.filter((run) => run.revision === 0 || run.changed);
  const ready = open.filter((run) => run.bars.length === 0);
  return {
    fresh: ready.filter((run) => run.revision === 0).length,
    changed: ready.filter((run) => run.revision > 0).length,
    waiting: open.filter((run) => run.bars.length > 0),
  };
}
