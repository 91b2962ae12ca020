import { Readable } from 'node:stream';
import { z } from 'zod';
import type { Gap } from '../domain/closeout/gap.ts';
import { type Readiness, ROWS, readiness } from '../domain/closeout/readiness.ts';
import { gapWords, ROW_WORDS } from '../domain/closeout/words.ts';
import { type CloseoutParts, closeoutPackage } from '../paper/closeout-package.ts';
import { openSnapshot, type Snapshot } from '../store/snapshot.ts';
import { audit } from './audit.ts';
import { partsOf } from './closeout/parts-of.ts';
import { readEvidence } from './closeout/read-evidence.ts';
import type { Context, Viewer } from './context.ts';
import { listOf, pageQuerySchema } from './paging.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

const counts = {
  required: z.number().int().describe('Pieces of evidence that the closeout asks for.'),
  present: z.number().int(),
  percent: z.number().int().nullable().describe('Present of required, rounded down; null where none is asked.'),
};

export const gapViewSchema = z.object({
  row: z.enum(ROWS),
  run: z.string().nullable().describe('The run by its key; null for what belongs to the whole job.'),
  runId: z.string().nullable(),
  subject: z.enum(['run', 'piece', 'joint', 'support', 'tap', 'test', 'type']),
  id: z.string().describe('Permanent id of the subject; of its run while that was never released.'),
  mark: z.string(),
  reason: z.string().describe('Stable code.'),
  words: z.string(),
  count: z.number().int(),
});

export const readinessViewSchema = z.object({
  ...counts,
  runs: z.number().int(),
  rows: z.array(z.object({ row: z.enum(ROWS), title: z.string(), asks: z.string(), ...counts })),
  gaps: listOf(gapViewSchema).describe('What is missing, by run and along each run.'),
});
export type ReadinessView = z.infer<typeof readinessViewSchema>;

export const readinessQuerySchema = pageQuerySchema.extend({
  row: z.enum(ROWS).optional().describe('Gaps of this row alone.'),
});

/** What a closeout asks of the job against what the record holds, with a page of the gaps. */
export async function closeoutReadiness(
  context: Context,
  viewer: Viewer,
  projectId: string,
  query: z.infer<typeof readinessQuerySchema>,
): Promise<ReadinessView> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'closeout');
  const { runs, types } = await readEvidence(db, projectId);
  return viewOf(readiness(runs, types), query);
}

function viewOf(
  { rows, gaps, ...sums }: Readiness,
  { row, page, limit }: z.infer<typeof readinessQuerySchema>,
): ReadinessView {
  const asked = row === undefined ? gaps : gaps.filter((gap) => gap.row === row);
  const items = asked.slice((page - 1) * limit, page * limit).map(gapView);
  return {
    ...sums,
    rows: rows.map((counted) => ({ ...ROW_WORDS[counted.row], ...counted })),
    gaps: { items, total: asked.length, page, limit },
  };
}

function gapView(gap: Gap): ReadinessView['gaps']['items'][number] {
  return { ...gap, words: gapWords(gap.reason) };
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
  const number = job.number.replaceAll(/[^A-Za-z0-9.-]+/g, '_').slice(0, 60);
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
