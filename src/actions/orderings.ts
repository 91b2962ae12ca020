import { z } from 'zod';
import { type OrderingDocument, orderingSchema, projectSchema } from '../document/job-document.ts';
import type { Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import { contentVersion } from './content-version.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { reach } from './reach.ts';
import { assertVersion } from './version.ts';

export const orderingViewSchema = z.object({
  version: z.number().int().describe('Made from what the rules say: equal rules have equal versions.'),
  document: orderingSchema.nullable(),
});
export type OrderingView = z.infer<typeof orderingViewSchema>;

/** The job's rules for ordering, for everybody who reads the job. */
export async function getOrdering(context: Context, viewer: Viewer, projectId: string): Promise<OrderingView> {
  await reach(context.database.db, viewer, projectId);
  return read(context.database.db, projectId);
}

/** Sets the rules for ordering; empty rules are none. No run is laid out anew: a layout knows nothing of them. */
export async function setOrdering(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  ordering: OrderingDocument,
): Promise<OrderingView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await read(tx, projectId);
    assertVersion(current, version, current);
    await changeDesign(tx, context, projectId, {
      scope: [],
      change: ({ project: { ordering: _before, ...project }, ...before }) => ({
        ...before,
        project: Object.keys(ordering).length === 0 ? project : { ...project, ordering },
      }),
      faultPath: (path) => path.replace(/^project\.ordering\.?/, ''),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'rules for ordering set',
      subject: 'ordering',
      subjectId: projectId,
      before: current.document,
      after: ordering,
    });
    return read(tx, projectId);
  });
}

async function read(reader: Reader, projectId: string): Promise<OrderingView> {
  const { spec } = await reader.project.findUniqueOrThrow({ where: { id: projectId }, select: { spec: true } });
  const document = projectSchema.parse(spec).ordering ?? null;
  return { version: contentVersion(document), document };
}
