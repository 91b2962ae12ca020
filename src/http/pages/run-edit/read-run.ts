import type { Context, Viewer } from '../../../actions/context.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { getRun } from '../../../actions/runs.ts';
import { type ProjectDocument, type RunDocument, runSchema } from '../../../document/job-document.ts';
import { type ReadRun, readRunForm } from '../../../document/run-form/read-run-form.ts';
import type { Entered } from '../form.ts';

export interface Typed {
  readonly run: RunDocument;
  readonly project: ProjectDocument;
  readonly fieldOf: (path: string) => string;
  /** What must be put right, or looked at once more, before anything is written; null when nothing must. */
  readonly again: ReadRun | null;
}

/** The run that was typed. A question that the form has shown already, about the same text, is answered by sending it again. */
export async function readRun(
  context: Context,
  viewer: Viewer,
  { jobId, runId }: { readonly jobId: string; readonly runId: string | null },
  fields: Entered,
): Promise<Typed> {
  const job = await jobParts(context, viewer, jobId);
  const before = runId === null ? null : (baseOf(fields) ?? (await getRun(context, viewer, jobId, runId)).document);
  const read = readRunForm(fields, job, before);
  const asked = fields.asked ?? '';
  const isWrong = read.faults.length > 0 || read.tapFaults.length > 0;
  const isOpen = questionsKey(read, fields) !== asked;
  return {
    run: read.run,
    project: job.project,
    fieldOf: read.fieldOf,
    again: isWrong || isOpen ? read : null,
  };
}

/** The run as it stood when the form was first shown. */
export function baseOf(fields: Entered): RunDocument | null {
  try {
    const parsed = runSchema.safeParse(JSON.parse(fields.base ?? ''));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** What is asked about which text: sent along, so that the same question is not asked twice. */
export function questionsKey(read: ReadRun, fields: Entered): string {
  const own = read.questions.map(({ field }) => `${field}=${fields[field]}`);
  const taps = read.tapQuestions.map(({ row, column, value }) => `tap ${row} ${column}=${value}`);
  return [...own, ...taps].join('|');
}
