import type { JobDocument } from '../document/job-document.ts';
import { readDesign } from '../store/designs.ts';
import type { Context, Viewer } from './context.ts';
import { reach } from './reach.ts';

/** The job document without its runs: what a form of one run is read against. */
export async function jobParts(context: Context, viewer: Viewer, projectId: string): Promise<JobDocument> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  return readDesign(db, projectId, []);
}
