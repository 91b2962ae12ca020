import type { JobDocument } from '../document/job-document.ts';
import { type Figures, figures } from '../domain/figures.ts';
import type { Job } from '../domain/model.ts';
import type { Reader } from '../store/database.ts';
import type { Context, Viewer } from './context.ts';
import { designOf, type JobDesign } from './job-design.ts';
import { type Reach, reach } from './reach.ts';

export interface JobFigures {
  readonly designVersion: number;
  readonly document: JobDocument;
  readonly job: Job;
  readonly figures: Figures;
}

/** Figures change with the design alone, and are kept as long as it is. */
const kept = new WeakMap<JobDesign, JobFigures>();

/** Takeoff, hours and checks of the design as it stands, from the layouts that are stored with it. Fence the money before it leaves. */
export async function getFigures(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<JobFigures & { readonly reached: Reach }> {
  const reached = await reach(context.database.db, viewer, projectId);
  return { ...(await figuresOf(context.database.db, projectId)), reached };
}

/** The same for a caller that has already asked who is reading. */
export async function figuresOf(reader: Reader, projectId: string): Promise<JobFigures> {
  const design = await designOf(reader, projectId);
  const known = kept.get(design);
  if (known !== undefined) return known;
  const { designVersion, document, job, layouts } = design;
  const computed = { designVersion, document, job, figures: figures(job, layouts) };
  kept.set(design, computed);
  return computed;
}
