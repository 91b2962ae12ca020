import type { JobDocument } from '../document/job-document.ts';
import { type Counted, countJob, type Figures, priceCounted } from '../domain/figures.ts';
import type { Job, UnpricedJob } from '../domain/model.ts';
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
/** What is counted from some layouts. It outlives a change of labour book or bid, which leaves them the same object. */
const counted = new WeakMap<JobDesign['layouts'], { readonly job: Job; readonly counted: Counted }>();

/** Takeoff, hours and checks of the design as it stands, from the layouts that are stored with it. Fence the money before it leaves. */
export async function getFigures(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<JobFigures & { readonly reached: Reach }> {
  const reached = await reach(context.database.db, viewer, projectId);
  return { ...(await figuresOf(context.database.db, projectId)), reached };
}

/** A job with what is counted of it; hours, range and bid are not worked out for it. */
export interface JobCounted {
  readonly job: Job;
  readonly counted: Counted;
}

/** What is counted of the design as it stands, for a caller that has already asked who is reading. */
export async function countedJob(reader: Reader, projectId: string): Promise<JobCounted> {
  const { job, layouts } = await designOf(reader, projectId);
  return { job, counted: countedOf(job, layouts) };
}

/** `getFigures` for a caller that has already asked who is reading. */
export async function figuresOf(reader: Reader, projectId: string): Promise<JobFigures> {
  const design = await designOf(reader, projectId);
  const known = kept.get(design);
  if (known !== undefined) return known;
  const { designVersion, document, job, layouts } = design;
  const computed = { designVersion, document, job, figures: priceCounted(job, countedOf(job, layouts)) };
  kept.set(design, computed);
  return computed;
}

function countedOf(job: Job, layouts: JobDesign['layouts']): Counted {
  const known = counted.get(layouts);
  if (known !== undefined && countsAlike(known.job, job)) return known.counted;
  const fresh = countJob(job, layouts);
  counted.set(layouts, { job, counted: fresh });
  return fresh;
}

/** Parts of a job that a change has left as they were are the same objects. */
function countsAlike(a: UnpricedJob, b: UnpricedJob): boolean {
  return (
    a.project === b.project &&
    a.levels === b.levels &&
    a.types === b.types &&
    a.runs === b.runs &&
    a.extras === b.extras
  );
}
