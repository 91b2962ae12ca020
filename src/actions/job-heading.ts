import { type ProjectDocument, projectSchema } from '../document/job-document.ts';
import type { Capability } from '../domain/access.ts';
import type { Context, Viewer } from './context.ts';
import { type Reach, reach } from './reach.ts';

/** What every page of a job says at its head: who reads it, in which units, and which reading of the design it is. */
export interface JobHeading {
  readonly reached: Reach;
  readonly project: ProjectDocument;
  readonly version: number;
  readonly designVersion: number;
  readonly archived: boolean;
}

export async function jobHeading(
  context: Context,
  viewer: Viewer,
  projectId: string,
  capability: Capability = 'read',
): Promise<JobHeading> {
  const { db } = context.database;
  const reached = await reach(db, viewer, projectId, capability);
  const row = await db.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { spec: true, version: true, designVersion: true, archivedAt: true },
  });
  return {
    reached,
    project: projectSchema.parse(row.spec),
    version: row.version,
    designVersion: row.designVersion,
    archived: row.archivedAt !== null,
  };
}
