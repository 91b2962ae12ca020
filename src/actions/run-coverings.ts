import { contextFor } from '../domain/layout/context-for.ts';
import { coverings, type RunCoverings } from '../domain/layout/coverings.ts';
import type { Project } from '../domain/model.ts';
import type { Context, Viewer } from './context.ts';
import { type Reach, reach } from './reach.ts';
import { runDesignOf } from './run-design.ts';

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
  const { run, job } = await runDesignOf(db, projectId, runId);
  return { project: job.project, ranked: coverings(run, contextFor(job, run)), reached };
}
