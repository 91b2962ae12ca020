import type { Context, Viewer } from '../../../actions/context.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { type DrawnRun, previewRun } from '../../../actions/run-preview.ts';
import { getRun } from '../../../actions/runs.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { JobDocument, ProjectDocument, RunDocument } from '../../../document/job-document.ts';
import type { ListFault } from '../../../document/lists/list-fault.ts';
import { type Pasted, takePasted } from '../../../document/run-form/pasted.ts';
import { type ReadRun, readRunForm } from '../../../document/run-form/read-run-form.ts';
import { lengthReadings } from '../../../document/run-form/readings.ts';
import type { Entered } from '../form.ts';
import { sayFault } from '../say-fault.ts';
import { baseOf } from './read-run.ts';

export interface TypedDrawing {
  /** What was typed, with the rows that were pasted in their places. */
  readonly pasted: Pasted;
  readonly read: ReadRun;
  readonly project: ProjectDocument;
  /** Why there is no drawing, by field; nothing where there is one. */
  readonly faults: readonly EntryFault[];
  readonly tapFaults: readonly ListFault[];
  /** How unusual figures were read, and what is asked about them. */
  readonly notes: readonly EntryFault[];
  readonly drawn: DrawnRun | null;
  /** Whether its cost may be shown. */
  readonly mayMoney: boolean;
}

/** Stands for the label of a new run until it has one. */
const NEW_RUN = 'NEW-RUN';

/** What a form is read against, for a caller that has read it already. */
interface Known {
  /** The job without its runs. */
  readonly job: JobDocument;
  /** The run as it is saved; null for a new one. */
  readonly saved: RunDocument | null;
}

/** The run as it stands in its form, laid out; nothing is saved. */
export async function drawTyped(
  context: Context,
  viewer: Viewer,
  { jobId, runId }: { readonly jobId: string; readonly runId: string | null },
  fields: Entered,
  known?: Known,
): Promise<TypedDrawing> {
  const job = known?.job ?? (await jobParts(context, viewer, jobId));
  const { units } = job.project;
  const pasted = takePasted(fields);
  const saved = async (id: string) => known?.saved ?? (await getRun(context, viewer, jobId, id)).document;
  const before = runId === null ? null : (baseOf(fields) ?? (await saved(runId)));
  const named = { ...pasted.entered, id: pasted.entered.id?.trim() || NEW_RUN };
  const read = readRunForm(named, job, before);
  const notes = [...read.questions, ...lengthReadings(pasted.entered, units)];
  const typed = { pasted, read, project: job.project, notes, tapFaults: read.tapFaults };
  const isUnread = read.faults.length > 0 || read.tapFaults.length > 0 || Object.keys(pasted.faults).length > 0;
  if (isUnread) return { ...typed, faults: read.faults, drawn: null, mayMoney: false };
  const run = { rowId: runId, key: before?.id ?? null, document: read.run };
  const preview = await previewRun(context, viewer, jobId, run, job);
  if (preview.ok) return { ...typed, faults: [], drawn: preview.drawn, mayMoney: preview.mayMoney };
  const faults = preview.faults.map((fault) => ({ field: read.fieldOf(fault.path), said: sayFault(fault, units) }));
  return { ...typed, faults, drawn: null, mayMoney: false };
}
