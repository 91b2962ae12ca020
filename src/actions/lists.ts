import type { JobDocument, RunDocument } from '../document/job-document.ts';
import type { ListFault, ReadList } from '../document/lists/list-fault.ts';
import type { RunsPreview, RunTap, TapsPreview } from '../document/lists/preview.ts';
import { readRuns } from '../document/lists/read-runs.ts';
import { readTaps } from '../document/lists/read-taps.ts';
import { withRuns, withTaps } from '../document/lists/with-list.ts';
import { writeRuns } from '../document/lists/write-runs.ts';
import { writeTaps } from '../document/lists/write-taps.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Tx } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

export type ListOf = 'runs' | 'taps';

export interface TakenList {
  /** How many runs or tap-offs were made. */
  readonly made: number;
}

/** What a list would make, or every cell that must be put right; nothing is written. */
export async function previewRunList(
  context: Context,
  viewer: Viewer,
  projectId: string,
  text: string,
): Promise<ReadList<RunDocument, RunsPreview>> {
  return readRuns(text, await readJob(context, viewer, projectId));
}

export async function previewTapList(
  context: Context,
  viewer: Viewer,
  projectId: string,
  text: string,
): Promise<ReadList<RunTap, TapsPreview>> {
  return readTaps(text, await readJob(context, viewer, projectId));
}

/** Makes the runs of a list, all or none, and lays them out with every run that they are joined to. */
export async function takeRunList(
  context: Context,
  viewer: Viewer,
  projectId: string,
  text: string,
  submission: Submission | null,
): Promise<TakenList> {
  return take(context, viewer, projectId, submission, async (tx) => {
    const runs = madeOf(readRuns(text, await readDesign(tx, projectId)));
    const named = runs.flatMap((run) => [run.pairedRun, run.feed.fromRun].filter((key) => key !== undefined));
    await changeDesign(tx, context, projectId, {
      scope: await connectedRuns(tx, projectId, named),
      change: (before) => withRuns(before, runs),
    });
    return { action: 'run list taken', made: runs.map((run) => run.id) };
  });
}

/** Adds the tap-offs of a list to their runs, all or none, and lays those runs out anew. */
export async function takeTapList(
  context: Context,
  viewer: Viewer,
  projectId: string,
  text: string,
  submission: Submission | null,
): Promise<TakenList> {
  return take(context, viewer, projectId, submission, async (tx) => {
    const taps = madeOf(readTaps(text, await readDesign(tx, projectId)));
    await changeDesign(tx, context, projectId, {
      scope: await connectedRuns(tx, projectId, [...new Set(taps.map(({ run }) => run))]),
      change: (before) => withTaps(before, taps),
    });
    return { action: 'tap list taken', made: taps.map(({ run, tap }) => `${run} ${tap.id}`) };
  });
}

/** The job's runs or tap-offs as a list that can be read back. */
export async function exportList(
  context: Context,
  viewer: Viewer,
  projectId: string,
  of: ListOf,
): Promise<{ readonly number: string; readonly text: string }> {
  const { db } = context.database;
  const { number } = await reach(db, viewer, projectId);
  const job = await readDesign(db, projectId);
  return { number, text: of === 'runs' ? writeRuns(job) : writeTaps(job) };
}

async function readJob(context: Context, viewer: Viewer, projectId: string): Promise<JobDocument> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  return readDesign(db, projectId);
}

async function take(
  context: Context,
  viewer: Viewer,
  projectId: string,
  submission: Submission | null,
  work: (tx: Tx) => Promise<{ readonly action: string; readonly made: readonly string[] }>,
): Promise<TakenList> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      const { action, made } = await work(tx);
      await audit(tx, context, viewer, {
        chain: projectId,
        action,
        subject: 'project',
        subjectId: projectId,
        after: { made },
      });
      return { made: made.length };
    }),
  );
}

/** What was read, or the refusal of the whole list with every faulty cell. */
function madeOf<Made>(read: ReadList<Made, unknown>): readonly Made[] {
  return read.ok ? read.made : refuse({ code: 'invalid', faults: read.faults.map(asFault) });
}

/** A faulty cell with its place as `rows[3].at`; row 1 holds the headings. */
export function asFault({ row, column, problem, remedy }: ListFault) {
  const place = row === null ? '' : `rows[${row}]`;
  return { path: column === null ? place : `${place}.${column}`.replace(/^\./, ''), message: problem, remedy };
}
