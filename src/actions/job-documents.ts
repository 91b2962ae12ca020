import { compareDocuments } from '../document/compare.ts';
import { type JobDocument, jobDocumentSchema } from '../document/job-document.ts';
import { withoutMoney } from '../document/money-fence.ts';
import { readDesign, saveDesign } from '../store/designs.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign, checked, layOut } from './designs.ts';
import { once, type Submission } from './once.ts';
import { getProject, insertProject, type ProjectView } from './projects.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

/** A new job from a job document, whole or not at all. */
export async function importDocument(
  context: Context,
  viewer: Viewer,
  input: unknown,
  submission: Submission | null,
): Promise<ProjectView> {
  const document = checked(input);
  const layouts = layOut(document);
  const made = await context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      const projectId = await insertProject(tx, context, viewer, document);
      const before = await readDesign(tx, projectId);
      await saveDesign(tx, { projectId, before, after: document, layouts, rename: null, newId: context.newId });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'job document imported',
        subject: 'project',
        subjectId: projectId,
        after: sizeOf(document),
      });
      return { projectId };
    }),
  );
  return getProject(context, viewer, made.projectId);
}

/** The job document as it stands, keys in the schema's order; without prices, rates and bid for anybody but the office. */
export async function exportDocument(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<{ document: JobDocument; designVersion: number }> {
  const reached = await reach(context.database.db, viewer, projectId);
  const { designVersion } = await context.database.db.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { designVersion: true },
  });
  const document = jobDocumentSchema.parse(await readDesign(context.database.db, projectId));
  return { document: reached.may('money') ? document : withoutMoney(document), designVersion };
}

/** What a document would change in a job, without writing anything. */
export async function previewDocument(context: Context, viewer: Viewer, projectId: string, input: unknown) {
  await reach(context.database.db, viewer, projectId, 'design');
  const after = checked(input);
  return compareDocuments(await readDesign(context.database.db, projectId), after);
}

/** Puts another document in the place of the design, keeping the identity of whatever has the same id. */
export async function replaceDocument(
  context: Context,
  viewer: Viewer,
  projectId: string,
  designVersion: number,
  input: unknown,
) {
  const next = checked(input);
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await tx.project.findUniqueOrThrow({
      where: { id: projectId },
      select: { designVersion: true, number: true },
    });
    assertVersion({ version: current.designVersion }, designVersion, { designVersion: current.designVersion });
    if (next.project.number !== current.number)
      refuse({
        code: 'invalid',
        faults: [
          {
            path: 'project.number',
            message: `This document is of job ${next.project.number}, not ${current.number}.`,
            remedy: 'Import it as a new job, or correct the number.',
          },
        ],
      });
    const { before, after } = await changeDesign(tx, context, projectId, { scope: 'all', change: () => next });
    const difference = compareDocuments(before, after);
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'job document replaced',
      subject: 'project',
      subjectId: projectId,
      after: difference,
      money: true,
    });
    return difference;
  });
}

function sizeOf(document: JobDocument) {
  const taps = document.runs.reduce((sum, run) => sum + (run.taps?.length ?? 0), 0);
  return { levels: document.levels.length, buswayTypes: document.buswayTypes.length, runs: document.runs.length, taps };
}
