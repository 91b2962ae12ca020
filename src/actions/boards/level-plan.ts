import type { Context, Viewer } from '../context.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';
import { refuse } from '../refused.ts';
import { floorPlans, type PlannedRun } from './floor-plans.ts';
import { type PlanBackground, planBackground } from './plan-background.ts';

export interface LevelPlan {
  readonly heading: JobHeading;
  readonly level: { readonly id: string; readonly key: string; readonly name: string };
  readonly runs: readonly PlannedRun[];
  /** Runs that are drawn as they were released. */
  readonly released: number;
  /** The picture under it, where there is one. */
  readonly background: PlanBackground | null;
}

/** Every run of a level as its plan draws it: the design as it stands. */
export async function levelPlan(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
): Promise<LevelPlan> {
  const heading = await jobHeading(context, viewer, projectId);
  const { db } = context.database;
  const level = await db.level.findFirst({
    where: { projectId, id: levelId },
    select: { id: true, key: true, name: true },
  });
  if (level === null) return refuse({ code: 'not-found', what: 'floor' });
  const rows = await db.run.findMany({
    where: { projectId, levelId },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true, revision: true, changed: true },
  });
  const [runs, background] = await Promise.all([floorPlans(context, rows), planBackground(db, levelId)]);
  const released = rows.filter((row) => row.revision > 0 && !row.changed).length;
  return { heading, level, runs, released, background };
}
