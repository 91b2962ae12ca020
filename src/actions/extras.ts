import { z } from 'zod';
import type { JobDocument } from '../document/job-document.ts';
import { extraSchema } from '../document/schema/bid.ts';
import type { Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import { contentVersion } from './content-version.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { reach } from './reach.ts';
import { assertVersion } from './version.ts';

export const extrasSchema = z.array(extraSchema).max(5_000);
export const extrasViewSchema = z.object({
  version: z.number().int().describe('Made from what the lines say: equal lines have equal versions.'),
  document: extrasSchema,
});
export type ExtrasView = z.infer<typeof extrasViewSchema>;

/** The lines that the estimator added by hand. They may have prices, so they are the office's. */
export async function getExtras(context: Context, viewer: Viewer, projectId: string): Promise<ExtrasView> {
  await reach(context.database.db, viewer, projectId, 'money');
  return read(context.database.db, projectId);
}

/** Sets the lines that are added by hand. No run is laid out anew. */
export async function setExtras(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  extras: NonNullable<JobDocument['extras']>,
): Promise<ExtrasView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'money');
    const current = await read(tx, projectId);
    assertVersion(current, version, current);
    await changeDesign(tx, context, projectId, {
      scope: [],
      change: ({ extras: _before, ...before }) => ({ ...before, ...(extras.length === 0 ? {} : { extras }) }),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'lines by hand set',
      subject: 'extras',
      subjectId: projectId,
      before: current.document,
      after: extras,
      money: true,
    });
    return read(tx, projectId);
  });
}

async function read(reader: Reader, projectId: string): Promise<ExtrasView> {
  const { extras } = await reader.project.findUniqueOrThrow({ where: { id: projectId }, select: { extras: true } });
  const document = extrasSchema.parse(extras ?? []);
  return { version: contentVersion(document), document };
}
