import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Conflict } from '../../../../views/components/conflict-list.tsx';
import type { FormFault } from '../../../../views/components/form-faults.tsx';
import { GROUP_WORDS } from '../../../../views/pages/run-edit/rows-of.tsx';
import { RunEditPage, type RunEditPageProps } from '../../../../views/pages/run-edit.tsx';
import { entryId, runEntryWord } from '../../../../views/words/run-entries.ts';
import type { Context } from '../../../actions/context.ts';
import { type JobHeading, jobHeading } from '../../../actions/job-heading.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { getRun, type RunView } from '../../../actions/runs.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { JobDocument } from '../../../document/job-document.ts';
import { ROW_GROUPS } from '../../../document/run-form/entries.ts';
import { pasteName } from '../../../document/run-form/pasted.ts';
import type { ReadRun } from '../../../document/run-form/read-run-form.ts';
import { writeRunForm } from '../../../document/run-form/write-run-form.ts';
import type { UnitSystem } from '../../../domain/model.ts';
import { assetVersion } from '../../plugins/assets.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import type { Entered, FormTrouble } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { sayFault } from '../say-fault.ts';
import { drawTyped, type TypedDrawing } from './draw-typed.ts';
import { drawingProps } from './drawing-props.ts';
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
  /** The drawing of what was typed, where it is known already. */
  readonly typed?: TypedDrawing;
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
  const entered =
    asked.fields ?? (current === null ? blank(job, asked.level) : writeRunForm(current.document, job.project));
  const known = { job, saved: current?.document ?? null };
  const typed = asked.typed ?? (await drawTyped(context, viewer, asked, entered, known));
  const faults = faultsOf(asked, job.project.units);
  const isRefused =
    faults.length > 0 ||
    asked.trouble !== undefined ||
    asked.read !== undefined ||
    Object.keys(typed.pasted.faults).length > 0;
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
    RunEditPage({
      ...fixedProps(context, reply, asked, job, current),
      ...said(asked, faults),
      summary: summaryOf(faults, asked, typed),
      entered,
      drawing: { ...drawingProps(typed), ...fresh(asked) },
      pasteFaults: typed.pasted.faults,
    }),
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
    levels: job.levels.map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
    types: job.buswayTypes.map((type) => ({ value: type.id, word: `${type.id}, ${type.ratedCurrentA} A` })),
    units,
    drawHref: `/jobs/${jobId}/runs/${runId ?? 'new'}/drawing`,
    assets: `/assets/${assetVersion()}`,
    example: units === 'ft-in' ? `12'-6 1/2", 12.5 ft or 3810 mm` : `3810, 3.81 m or 12'-6"`,
    released: current !== null && current.revision > 0,
    leaveHref: current === null ? `/jobs/${jobId}/floors` : `/jobs/${jobId}/runs/${runId}`,
    removal:
      current === null || current.revision > 0
        ? null
        : { action: `/jobs/${jobId}/runs/${runId}/removal`, label: current.key },
  } satisfies Partial<RunEditPageProps>;
}

/** A form that nobody has typed into says so, and a new run has no faults yet. */
function fresh({ fields, runId }: Asked): Partial<RunEditPageProps['drawing']> {
  if (fields !== undefined) return {};
  return runId === null ? { fresh: 'blank', faults: [] } : { fresh: 'saved' };
}

function said(asked: Asked, faults: readonly EntryFault[]) {
  const { read, typed, fields, conflicts } = asked;
  const tapFaults = (read ?? typed?.read)?.tapFaults ?? [];
  const isWrong = faults.length > 0 || tapFaults.length > 0;
  return {
    faultOf: (name: string) => faults.find((fault) => fault.field === name)?.said,
    // While anything is wrong the questions wait: they are asked once the rest is right.
    questions: isWrong ? [] : (read?.questions ?? []),
    tapQuestions: isWrong ? [] : (read?.tapQuestions ?? []),
    asked: read === undefined || isWrong || fields === undefined ? (fields?.asked ?? '') : questionsKey(read, fields),
    tapFaults,
    conflicts: conflicts ?? null,
  } satisfies Partial<RunEditPageProps>;
}

function faultsOf({ read, trouble, fieldOf, typed }: Asked, units: UnitSystem): EntryFault[] {
  const refused = (trouble?.faults ?? []).map((fault) => ({
    field: fieldOf?.(fault.path) ?? fault.path,
    said: sayFault(fault, units),
  }));
  return [...(read?.faults ?? []), ...refused, ...(typed?.faults ?? [])];
}

function summaryOf(faults: readonly EntryFault[], { read }: Asked, { pasted }: TypedDrawing): FormFault[] {
  const own = faults.map(({ field, said: message }) => ({
    field: entryId(field),
    label: runEntryWord(field),
    message,
  }));
  const lists = [
    ...ROW_GROUPS.map((group) => ({
      field: entryId(pasteName(group)),
      label: GROUP_WORDS[group],
      cells: pasted.faults[group]?.length ?? 0,
    })),
    { field: 'f-taps', label: 'Tap-offs', cells: read?.tapFaults.length ?? 0 },
  ].filter(({ cells }) => cells > 0);
  return [
    ...own,
    ...lists.map(({ field, label, cells }) => ({
      field,
      label,
      message: cells === 1 ? 'one cell is listed above the rows.' : `${cells} cells are listed above the rows.`,
    })),
  ];
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
