import { Readable } from 'node:stream';
import type { z } from 'zod';
import { type CloseoutParts, closeoutPackage } from '../paper/closeout-package.ts';
import { openSnapshot, type Snapshot } from '../store/snapshot.ts';
import { audit } from './audit.ts';
import { partsOf } from './closeout/parts-of.ts';
import { readinessOf } from './closeout/readiness-of.ts';
import { type ReadinessView, type readinessQuerySchema, readinessView } from './closeout/readiness-view.ts';
import type { Context, Viewer } from './context.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

export { type ReadinessView, readinessQuerySchema, readinessViewSchema } from './closeout/readiness-view.ts';

/** What a closeout asks of the job against what the record holds, with a page of the gaps. */
export async function closeoutReadiness(
  context: Context,
  viewer: Viewer,
  projectId: string,
  query: z.infer<typeof readinessQuerySchema>,
): Promise<ReadinessView> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'closeout');
  return readinessView(await readinessOf(db, projectId), query);
}

/** Building one reads the whole job: more at a time would keep everybody else waiting. */
const MOST_AT_ONCE = 2;
let building = 0;

/**
 * The closeout package of the job as it stands now, as a stream. That it was made is entered in the site's chain and not in
 * the job's, so that making it does not change what it holds.
 */
export async function buildCloseout(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<{ readonly fileName: string; readonly stream: Readable }> {
  await reach(context.database.db, viewer, projectId, 'closeout');
  if (building >= MOST_AT_ONCE) {
    refuse({
      code: 'work-refused',
      what: 'Closeouts are being made',
      number: `${building} are being made at this moment, and no more than ${MOST_AT_ONCE} are at once.`,
      remedy: 'Try again when one of them is done.',
    });
  }
  building += 1;
  try {
    const snapshot = await openSnapshot(context.database);
    return await startFrom(snapshot, context, viewer, projectId);
  } catch (error) {
    building -= 1;
    throw error;
  }
}

async function startFrom(snapshot: Snapshot, context: Context, viewer: Viewer, projectId: string) {
  try {
    const parts = await partsOf(snapshot.reader, projectId);
    const fileName = fileNameOf(parts);
    await noteExport(context, viewer, projectId, parts, fileName);
    const stream = Readable.from(closeoutPackage(parts), { objectMode: false });
    // At the end, on a fault, or when the reader goes away: the snapshot is given back.
    stream.once('close', () => {
      building -= 1;
      void snapshot.close();
    });
    return { fileName, stream };
  } catch (error) {
    await snapshot.close();
    throw error;
  }
}

function fileNameOf({ job }: CloseoutParts): string {
  const number = job.number.replaceAll(/[^A-Za-z0-9-]+/g, '_').slice(0, 60);
  return `closeout-${number}-${job.asOf.slice(0, 10)}-${job.audit.head.slice(0, 8)}.zip`;
}

async function noteExport(
  context: Context,
  viewer: Viewer,
  projectId: string,
  { job }: CloseoutParts,
  fileName: string,
): Promise<void> {
  const after = { fileName, asOf: job.asOf, designVersion: job.designVersion, auditHead: job.audit.head };
  await context.database.write((tx) =>
    audit(tx, context, viewer, {
      chain: 'site',
      action: 'closeout made',
      subject: 'project',
      subjectId: projectId,
      after,
    }),
  );
}
