import type { Fault } from '../document/fault.ts';
import type { JobDocument, RunDocument } from '../document/job-document.ts';
import type { BulkAsked } from '../document/several/bulk-schema.ts';
import { type BulkDifference, type BulkPlan, planBulk } from '../document/several/plan-bulk.ts';
import type { Finding } from '../domain/finding.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader, Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign, checked, layOut } from './designs.ts';
import { faceOffsAround, faceOffsOfMade, nobodyStatesBoxes } from './face-offs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { findingChanges } from './several/finding-changes.ts';
import { releasedOf } from './several/released-of.ts';
import { runsAround } from './several/runs-around.ts';
import { assertSeen, type Seen, seenOf } from './several/seen.ts';

export interface BulkPreview {
  readonly differences: readonly BulkDifference[];
  readonly changed: readonly string[];
  /** Runs that have all of it already. */
  readonly same: number;
  /** Changed runs that the floor has. */
  readonly released: readonly string[];
  readonly appearing: readonly Finding[];
  readonly disappearing: readonly Finding[];
  readonly notes: readonly string[];
  readonly seen: Seen;
}

/** What a change to many runs would come to, with the findings that come and go; nothing is written. */
export async function previewChanges(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: BulkAsked,
): Promise<BulkPreview> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  const { job, plan } = await planned(db, projectId, asked);
  const changed = plan.changed.map((run) => run.id);
  const reached = new Set(await connectedRuns(db, projectId, changed));
  const scope = { ...job, runs: job.runs.filter((run) => reached.has(run.id)) };
  const after = layOut(checked(withChanged(scope, plan.changed), { faultPath: (path) => bulkFaultPath(path, asked) }));
  const before = await layoutsOf(db, projectId, reached);
  const across = await acrossOf(db, projectId, withChanged(scope, plan.changed), changed);
  return {
    differences: plan.differences,
    changed,
    same: plan.same,
    released: await releasedOf(db, projectId, changed),
    ...findingChanges(
      [...before.flatMap((layout) => layout.findings), ...across.before],
      [...[...after.values()].flatMap((layout) => layout.findings), ...across.after],
    ),
    notes: plan.notes,
    seen: await seenOf(db, projectId, asked.runs),
  };
}

/** Changes many runs, all or none, in one transaction; refused where one of them changed since the preview. */
export async function changeTogether(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: BulkAsked,
  seen: Seen,
  submission: Submission | null,
): Promise<{ readonly changed: readonly string[]; readonly released: readonly string[] }> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      await assertSeen(tx, context, projectId, asked.runs, seen);
      const { plan } = await planned(tx, projectId, asked);
      const changed = plan.changed.map((run) => run.id);
      if (changed.length === 0) return { changed, released: [] };
      await changeDesign(tx, context, projectId, {
        scope: await connectedRuns(tx, projectId, changed),
        change: (before) => withChanged(before, plan.changed),
        faultPath: (path) => bulkFaultPath(path, asked),
      });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'runs changed together',
        subject: 'project',
        subjectId: projectId,
        before: { was: plan.differences.map(({ run, field, from }) => ({ run, field, from })) },
        after: { set: asked.set, runs: changed },
      });
      return { changed, released: await releasedOf(tx, projectId, changed) };
    }),
  );
}

type SoundBulk = Extract<BulkPlan, { ok: true }>;

async function planned(
  reader: Reader | Tx,
  projectId: string,
  asked: BulkAsked,
): Promise<{ job: JobDocument; plan: SoundBulk }> {
  const { job, taken } = await runsAround(reader, projectId, asked.runs, null);
  const plan = planBulk(job, taken, asked);
  return plan.ok ? { job, plan } : refuse({ code: 'invalid', faults: plan.faults satisfies readonly Fault[] });
}

/** What the changed runs' tap-offs have too little room from, before and after. */
async function acrossOf(reader: Reader, projectId: string, after: JobDocument, changed: readonly string[]) {
  if (nobodyStatesBoxes(after.buswayTypes)) return { before: [], after: [] };
  const before = [...(await faceOffsAround(reader, projectId, changed)).values()].flat();
  const { job } = await runsAround(reader, projectId, changed, []);
  return { before, after: faceOffsOfMade(after, job, changed) };
}

function withChanged(job: JobDocument, changed: readonly RunDocument[]): JobDocument {
  const now = new Map(changed.map((run) => [run.id, run]));
  return { ...job, runs: job.runs.map((run) => now.get(run.id) ?? run) };
}

async function layoutsOf(reader: Reader, projectId: string, keys: ReadonlySet<string>): Promise<readonly RunLayout[]> {
  const rows = await reader.run.findMany({
    where: { projectId, ...(keys.size > 500 ? {} : { key: { in: [...keys] } }) },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { key: true, layout: true },
  });
  return rows.filter(({ key }) => keys.has(key)).map(({ layout }) => layout as unknown as RunLayout);
}

/** A fault of a changed run's document as the field of the change that it follows from. */
function bulkFaultPath(path: string, { set }: BulkAsked): string {
  const own = /^runs\[\d+\]\.(?:feed\.)?(\w+)/.exec(path)?.[1] ?? '';
  const field = own === 'start' ? 'elevationMm' : own;
  return Object.hasOwn(set, field) ? `set.${field}` : path;
}
