import type { JobDocument, RunDocument } from '../document/job-document.ts';
import { type PartnersAsked, planPartners } from '../document/several/plan-partners.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader, Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import type { SeveralPreview } from './run-copies.ts';
import { madeFaultPath, madePreview, type Sound, soundPlan } from './several/made-preview.ts';
import { releasedOf } from './several/released-of.ts';
import { runsAround } from './several/runs-around.ts';
import { assertSeen, type Seen, seenOf } from './several/seen.ts';

/** The partners on the other feed side as they would be; nothing is written. */
export async function previewPartners(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: PartnersAsked,
): Promise<SeveralPreview> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  const { job, plan } = await planned(db, projectId, asked);
  const changed = plan.changed.map((run) => run.id);
  const reached = new Set(await connectedRuns(db, projectId, changed));
  const joined = { ...job, runs: job.runs.filter((run) => reached.has(run.id)) };
  return {
    ...madePreview(withPartners(joined, plan), plan, job),
    made: plan.made.map(({ run }) => run),
    changed,
    released: await releasedOf(db, projectId, changed),
    seen: await seenOf(db, projectId, changed),
  };
}

/** Makes the partners, all or none, and lets each run name its partner. With `seen`, only of what the preview showed. */
export async function makePartners(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: PartnersAsked,
  seen: Seen | null,
  submission: Submission | null,
): Promise<{ readonly made: readonly string[] }> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      const { plan } = await planned(tx, projectId, asked);
      const sources = plan.changed.map((run) => run.id);
      if (seen !== null) await assertSeen(tx, context, projectId, sources, seen);
      await changeDesign(tx, context, projectId, {
        scope: await connectedRuns(tx, projectId, sources),
        change: (before) => withPartners(before, plan),
        faultPath: madeFaultPath,
      });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'partners made',
        subject: 'project',
        subjectId: projectId,
        after: { asked, made: plan.made.map(({ run, from }) => ({ run: run.id, from })) },
      });
      return { made: plan.made.map(({ run }) => run.id) };
    }),
  );
}

async function planned(
  reader: Reader | Tx,
  projectId: string,
  asked: PartnersAsked,
): Promise<{ job: JobDocument; plan: Sound }> {
  const { job, taken } = await runsAround(reader, projectId, asked.runs, []);
  return { job, plan: soundPlan(planPartners(job, taken, asked)) };
}

function withPartners(job: JobDocument, { made, changed }: Sound): JobDocument {
  const now = new Map<string, RunDocument>(changed.map((run) => [run.id, run]));
  return { ...job, runs: [...job.runs.map((run) => now.get(run.id) ?? run), ...made.map(({ run }) => run)] };
}
