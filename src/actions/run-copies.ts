import type { JobDocument, RunDocument } from '../document/job-document.ts';
import { type CopyAsked, planCopies } from '../document/several/plan-copies.ts';
import { chosenRuns } from '../document/several/with-branches.ts';
import type { Reader, Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { type MadePreview, madeFaultPath, madePreview, type Sound, soundPlan } from './several/made-preview.ts';
import { runsAround } from './several/runs-around.ts';
import { assertSeen, type Seen, seenOf } from './several/seen.ts';

export interface SeveralPreview extends MadePreview {
  readonly seen: Seen;
  readonly made: readonly RunDocument[];
  /** Runs of the design that would change, and those of them that the floor has. */
  readonly changed: readonly string[];
  readonly released: readonly string[];
}

/** The copies as they would be, every one by its name; nothing is written. */
export async function previewCopies(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: CopyAsked,
): Promise<SeveralPreview> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  const { job, plan, chosen } = await planned(db, projectId, asked);
  const made = plan.made.map(({ run }) => run);
  const preview = madePreview({ ...job, runs: made }, plan, job);
  return { ...preview, made, changed: [], released: [], seen: await seenOf(db, projectId, chosen) };
}

/** Makes the copies, all or none, in one transaction. With `seen`, only of what the preview showed. */
export async function makeCopies(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: CopyAsked,
  seen: Seen | null,
  submission: Submission | null,
): Promise<{ readonly made: readonly string[] }> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      const { plan, chosen } = await planned(tx, projectId, asked);
      if (seen !== null) await assertSeen(tx, context, projectId, chosen, seen);
      const made = plan.made.map(({ run }) => run);
      await changeDesign(tx, context, projectId, {
        scope: [],
        change: (before) => ({ ...before, runs: [...before.runs, ...made] }),
        faultPath: madeFaultPath,
      });
      const ids = made.map((run) => run.id);
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'runs copied',
        subject: 'project',
        subjectId: projectId,
        after: { asked, made: plan.made.map(({ run, from }) => ({ run: run.id, from })) },
      });
      return { made: ids };
    }),
  );
}

async function planned(
  reader: Reader | Tx,
  projectId: string,
  asked: CopyAsked,
): Promise<{ job: JobDocument; plan: Sound; chosen: readonly string[] }> {
  const { job, taken } = await runsAround(reader, projectId, asked.runs, asked.levels);
  const plan = soundPlan(planCopies(job, taken, asked));
  return { job, plan, chosen: chosenRuns(job.runs, asked.runs, asked.branches).map((run) => run.id) };
}
