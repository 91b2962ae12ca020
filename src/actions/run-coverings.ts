import { contextFor } from '../domain/layout/context-for.ts';
import { coverings, type RunCoverings } from '../domain/layout/coverings.ts';
import type { Project } from '../domain/model.ts';
import type { Context, Viewer } from './context.ts';
import { designOf } from './job-design.ts';
import { type Reach, reach } from './reach.ts';
import { refuse } from './refused.ts';

export interface RankedRun {
  readonly project: Project;
  readonly ranked: RunCoverings;
  readonly reached: Reach;
}

/** The best coverings of one run as its design stands, worked when somebody asks. Fence the money before it leaves. */
export async function runCoverings(
  context: Context,
  viewer: Viewer,
  projectId: string,
  runId: string,
): Promise<RankedRun> {
  const { db } = context.database;
  const reached = await reach(db, viewer, projectId);
  const row = await db.run.findFirst({ where: { projectId, id: runId }, select: { key: true } });
  if (row === null) return refuse({ code: 'not-found', what: 'run' });
  const { job } = await designOf(db, projectId);
  const run = job.runs.find((one) => one.id === row.key);
  if (run === undefined) return refuse({ code: 'not-found', what: 'run' });
  return { project: job.project, ranked: coverings(run, contextFor(job, run)), reached };
}
