import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Conflict } from '../../../../views/components/conflict-list.tsx';
import type { FormFault } from '../../../../views/components/form-faults.tsx';
import { RunEditPage, type RunEditPageProps } from '../../../../views/pages/run-edit.tsx';
import { runEntryWord } from '../../../../views/words/run-entries.ts';
import type { Context } from '../../../actions/context.ts';
import { type JobHeading, jobHeading } from '../../../actions/job-heading.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { getRun, type RunView } from '../../../actions/runs.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { JobDocument } from '../../../document/job-document.ts';
import type { ReadRun } from '../../../document/run-form/read-run-form.ts';
import { writeRunForm } from '../../../document/run-form/write-run-form.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import type { Entered, FormTrouble } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { questionsKey } from './read-run.ts';

export interface Asked {
  readonly jobId: string;
  /** null for a new run. */
  readonly runId: string | null;
  /** Where a new run shall hang. */
  readonly level?: string;
  /** What was typed, when it comes back. */
  readonly fields?: Entered;
  readonly read?: ReadRun;
  readonly trouble?: FormTrouble;
  readonly fieldOf?: (path: string) => string;
  readonly version?: number;
  readonly base?: string;
  readonly conflicts?: readonly Conflict[];
}

/** The form of a run: as it stands, or as it was typed with what is wrong beside each entry. */
export async function showRunForm(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  asked: Asked,
): Promise<FastifyReply> {
  const viewer = viewerOf(request);
  const { jobId, runId } = asked;
  const heading = await jobHeading(context, viewer, jobId, 'design');
  const job = await jobParts(context, viewer, jobId);
  const current = runId === null ? null : await getRun(context, viewer, jobId, runId);
  const faults = faultsOf(asked);
  const isRefused = faults.length > 0 || asked.trouble !== undefined || asked.read !== undefined;
  const status = asked.conflicts === undefined ? (asked.trouble?.status ?? (isRefused ? 422 : 200)) : 412;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: current === null ? 'Add a run' : `Edit run ${current.key}`,
        part: 'floors',
      }),
      status,
      lede: 'What is not known stays empty: it then counts as unknown, never as in order.',
      trail: trailOf(heading, current, jobId),
      ...(asked.trouble === undefined ? {} : { flash: { kind: 'stop' as const, text: asked.trouble.notice } }),
    },
    RunEditPage({ ...fixedProps(context, reply, asked, job, current), ...said(asked, faults) }),
  );
}

function fixedProps(context: Context, reply: FastifyReply, asked: Asked, job: JobDocument, current: RunView | null) {
  const { jobId, runId } = asked;
  const path = current === null ? `/jobs/${jobId}/runs/new` : `/jobs/${jobId}/runs/${runId}/edit`;
  const { units } = job.project;
  return {
    jobId,
    action: path,
    csrf: formToken(reply),
    ...(current === null
      ? { submissionId: asked.fields?.submissionId ?? context.newId() }
      : {
          version: asked.version ?? versionOf(asked.fields) ?? current.version,
          base: asked.base ?? asked.fields?.base ?? JSON.stringify(current.document),
        }),
    entered: asked.fields ?? (current === null ? blank(job, asked.level) : writeRunForm(current.document, job.project)),
    levels: job.levels.map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
    types: job.buswayTypes.map((type) => ({ value: type.id, word: `${type.id}, ${type.ratedCurrentA} A` })),
    example: units === 'ft-in' ? `12'-6 1/2", 12.5 ft or 3810 mm` : `3810, 3.81 m or 12'-6"`,
    released: current !== null && current.revision > 0,
    leaveHref: current === null ? `/jobs/${jobId}/floors` : `/jobs/${jobId}/runs/${runId}`,
    removal:
      current === null || current.revision > 0
        ? null
        : { action: `/jobs/${jobId}/runs/${runId}/removal`, label: current.key },
  } satisfies Partial<RunEditPageProps>;
}

function said(asked: Asked, faults: readonly EntryFault[]) {
  const { read, fields, conflicts } = asked;
  const isWrong = faults.length > 0 || (read?.tapFaults.length ?? 0) > 0;
  return {
    faultOf: (name: string) => faults.find((fault) => fault.field === name)?.said,
    summary: summaryOf(faults, read),
    // While anything is wrong the questions wait: they are asked once the rest is right.
    questions: isWrong ? [] : (read?.questions ?? []),
    tapQuestions: isWrong ? [] : (read?.tapQuestions ?? []),
    asked: read === undefined || isWrong || fields === undefined ? (fields?.asked ?? '') : questionsKey(read, fields),
    tapFaults: read?.tapFaults ?? [],
    conflicts: conflicts ?? null,
  } satisfies Partial<RunEditPageProps>;
}

function faultsOf({ read, trouble, fieldOf }: Asked): EntryFault[] {
  const refused = (trouble?.faults ?? []).map(({ path, message, remedy }) => ({
    field: fieldOf?.(path) ?? path,
    said: `${message} ${remedy}`.trim(),
  }));
  return [...(read?.faults ?? []), ...refused];
}

function summaryOf(faults: readonly EntryFault[], read: ReadRun | undefined): FormFault[] {
  const own = faults.map(({ field, said: message }) => ({
    field: `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`,
    label: runEntryWord(field),
    message,
  }));
  const taps = read?.tapFaults.length ?? 0;
  if (taps === 0) return own;
  const message = taps === 1 ? 'one cell is listed above the rows.' : `${taps} cells are listed above the rows.`;
  return [...own, { field: 'f-taps', label: 'Tap-offs', message }];
}

function versionOf(fields: Entered | undefined): number | undefined {
  const version = Number(fields?.version);
  return Number.isInteger(version) && version > 0 ? version : undefined;
}

/** A new run hangs on the level it was asked for, of the job's first type. */
function blank(job: JobDocument, level: string | undefined): Entered {
  return {
    level: level ?? job.levels[0]?.id ?? '',
    type: job.buswayTypes[0]?.id ?? '',
    'feed.kind': 'end',
    conductorSide: 'left',
  };
}

function trailOf(heading: JobHeading, current: RunView | null, jobId: string) {
  return [
    { word: 'Jobs', href: '/jobs' },
    { word: heading.reached.number, href: `/jobs/${jobId}/floors` },
    ...(current === null ? [] : [{ word: current.key, href: `/jobs/${jobId}/runs/${current.id}` }]),
  ];
}
