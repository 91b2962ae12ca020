import { z } from 'zod';
import type { RunDocument } from '../document/job-document.ts';
import type { Finding } from '../domain/finding.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Tx } from '../store/database.ts';
import { inChunks } from '../store/in-chunks.ts';
import { releaseRows } from '../store/releases.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { faceOffsAround } from './face-offs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { settleRuns } from './records/settle-runs.ts';
import { refuse } from './refused.ts';

export const releaseSchema = z.strictObject({
  runs: z
    .array(z.string())
    .min(1)
    .max(10_000)
    .optional()
    .describe('Keys of the runs to release; all that are ready and new or changed when absent.'),
  reason: z.string().trim().max(500).default('').describe('Why; asked for when a released run changes.'),
});

export const releaseViewSchema = z.object({
  released: z.array(z.object({ run: z.string(), revision: z.number().int() })),
  waiting: z
    .array(z.object({ run: z.string(), reasons: z.array(z.string()) }))
    .describe('Runs that are not ready, and why.'),
});
export type ReleaseView = z.infer<typeof releaseViewSchema>;

/**
 * Hands runs to the floor: their pieces, joints, hangers and tap-offs get an identity that later revisions keep.
 * A run with a stop, or with a limit that nobody has stated, waits. Named runs are released all or none.
 */
export async function release(
  context: Context,
  viewer: Viewer,
  projectId: string,
  input: z.infer<typeof releaseSchema>,
  submission: Submission | null,
): Promise<ReleaseView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      const rows = await readAsked(tx, projectId, input.runs);
      const found = new Set(rows.map((row) => row.key));
      const unknown = (input.runs ?? []).filter((key) => !found.has(key));
      if (unknown.length > 0) refuse({ code: 'not-found', what: `run ${unknown.join(', ')}` });
      const runs = rows.map((row) => ({
        ...row,
        spec: row.spec as unknown as RunDocument,
        layout: row.layout as unknown as RunLayout,
      }));
      const faceOffs = await faceOffsAround(tx, projectId, [...found]);
      const waiting = runs
        .map((run) => ({ run: run.key, reasons: bars([...run.layout.findings, ...(faceOffs.get(run.key) ?? [])]) }))
        .filter(({ reasons }) => reasons.length > 0);
      if (input.runs !== undefined && waiting.length > 0)
        refuse({ code: 'not-releasable', reasons: waiting.map(({ run, reasons }) => `${run}: ${reasons.join(' ')}`) });
      const ready = runs.filter((run) => !waiting.some((other) => other.run === run.key));
      if (ready.length > 0) {
        await releaseRows(tx, {
          projectId,
          runs: ready,
          reason: input.reason,
          byUserId: viewer.userId,
          at: context.clock(),
          newId: context.newId,
        });
        await settleRuns(
          tx,
          projectId,
          ready.map((run) => run.id),
          context.clock(),
        );
        await tx.project.update({ where: { id: projectId }, data: { designVersion: { increment: 1 } } });
      }
      const released = ready.map((run) => ({ run: run.key, revision: run.revision + 1 }));
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'runs released',
        subject: 'project',
        subjectId: projectId,
        after: { released, reason: input.reason },
      });
      return { released, waiting };
    }),
  );
}

const ASKED = { id: true, key: true, ordinal: true, revision: true, spec: true, layout: true } as const;

/** The named runs, or all that are new or changed, in document order. */
async function readAsked(tx: Tx, projectId: string, keys: readonly string[] | undefined) {
  if (keys === undefined) {
    return tx.run.findMany({
      where: { projectId, OR: [{ revision: 0 }, { changed: true }] },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      select: ASKED,
    });
  }
  const rows = await inChunks([...new Set(keys)], (chunk) =>
    tx.run.findMany({ where: { projectId, key: { in: chunk } }, select: ASKED }),
  );
  return rows.sort((a, b) => a.ordinal - b.ordinal);
}

const UNKNOWN: ReadonlySet<string> = new Set(['limit.unknown', 'weight.unknown']);

/** What keeps a layout from the floor: every stop, and every limit or weight that is unknown. */
export function bars(findings: readonly Finding[]): string[] {
  return findings
    .filter((finding) => finding.severity === 'stop' || UNKNOWN.has(finding.rule))
    .map((finding) => finding.message);
}
