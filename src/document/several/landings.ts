import { contextFor } from '../../domain/layout/context-for.ts';
import { runGeometry } from '../../domain/layout/geometry.ts';
import { pathPoints } from '../../domain/layout/path-points.ts';
import { liesInOneAnother } from '../../domain/layout/plan-overlap.ts';
import type { PathPoint } from '../../domain/layout/result.ts';
import type { Job, Run } from '../../domain/model.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import { toModel } from '../to-model.ts';
import type { MadeRun } from './plan.ts';
import { parentOf } from './with-branches.ts';

export interface Landing {
  readonly made: MadeRun;
  readonly on: string;
}

/**
 * Made runs that would lie in another run of their level, the first such run for each. A run that states no place in plan
 * is not compared, nor are two made from runs that lie in one another already.
 */
export function landings(job: JobDocument, made: readonly MadeRun[]): Landing[] {
  const whole: JobDocument = { ...job, runs: [...job.runs, ...made.map(({ run }) => run)] };
  const model = toModel(whole);
  const placed = new Set(withPlace(whole.runs));
  const drawn = new Map(
    model.runs.filter((run) => placed.has(run.id)).map((run) => [run.id, drawnRun(model, run)] as const),
  );
  const byLevel = grouped([...drawn.values()]);
  const sourceOf = new Map(made.map(({ run, from }) => [run.id, from]));
  return made.flatMap((one) => {
    const own = drawn.get(one.run.id);
    const on = own && byLevel.get(own.level)?.find((other) => other !== own && meets(own, other, sourceOf, drawn));
    return on === undefined ? [] : [{ made: one, on: on.id }];
  });
}

interface Drawn {
  readonly id: string;
  readonly level: string;
  readonly path: readonly PathPoint[];
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

function grouped(runs: readonly Drawn[]): ReadonlyMap<string, readonly Drawn[]> {
  const levels = new Map<string, Drawn[]>();
  for (const run of runs) {
    const here = levels.get(run.level);
    if (here) here.push(run);
    else levels.set(run.level, [run]);
  }
  return levels;
}

function drawnRun(job: Job, run: Run): Drawn {
  const geometry = runGeometry(run, contextFor(job, run).parent);
  const path = pathPoints(geometry, Math.max(0, geometry.length));
  const [xs, ys] = [path.map((point) => point.x), path.map((point) => point.y)];
  return {
    id: run.id,
    level: run.level,
    path,
    low: [Math.min(...xs), Math.min(...ys)],
    high: [Math.max(...xs), Math.max(...ys)],
  };
}

function meets(
  own: Drawn,
  other: Drawn,
  sourceOf: ReadonlyMap<string, string>,
  drawn: ReadonlyMap<string, Drawn>,
): boolean {
  if (isClear(own, other) || !liesInOneAnother(own.path, other.path)) return false;
  const [one, two] = [drawn.get(sourceOf.get(own.id) ?? ''), drawn.get(sourceOf.get(other.id) ?? '')];
  const areBothMade = one !== undefined && two !== undefined && one !== two;
  return !(areBothMade && liesInOneAnother(one.path, two.path));
}

function isClear(a: Drawn, b: Drawn): boolean {
  return [0, 1].some((axis) => a.high[axis]! < b.low[axis]! || b.high[axis]! < a.low[axis]!);
}

/** Runs that state where they begin, and the branches that hang off them. */
function withPlace(runs: readonly RunDocument[]): string[] {
  const byId = new Map(runs.map((run) => [run.id, run]));
  const known = new Map<string, boolean>();
  const isPlaced = (run: RunDocument): boolean => {
    const before = known.get(run.id);
    if (before !== undefined) return before;
    known.set(run.id, false); // a ring of tees has no place
    const parent = byId.get(parentOf(run) ?? '');
    const placed = run.feed.kind === 'tee' ? parent !== undefined && isPlaced(parent) : run.start !== undefined;
    known.set(run.id, placed);
    return placed;
  };
  return runs.filter(isPlaced).map((run) => run.id);
}
