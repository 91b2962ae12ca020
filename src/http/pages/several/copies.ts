import type { FastifyReply, FastifyRequest } from 'fastify';
import { CopiesPage } from '../../../../views/pages/several/copies.tsx';
import type { Context } from '../../../actions/context.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { makeCopies, previewCopies } from '../../../actions/run-copies.ts';
import { levelsOf } from '../../../actions/several/level-runs.ts';
import { readCopyForm } from '../../../document/several/read-copy-form.ts';
import type { App } from '../../app-type.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, type FormTrouble, formSubmission } from '../form.ts';
import { goTo } from '../page.ts';
import { madeProps } from './made-props.ts';
import { firstRuns, jobParams, runsQuery, seenIn, sendSeveral, severalPath } from './sheet.ts';
import { faultOfField, faultsBeside, summaryOf, type Typed, typedIn } from './typed.ts';

const FRESH = { rows: '', taps: 'yes', branches: 'yes' };

/** Copies of runs: the form, what it would make, and the making. */
export function copies(app: App, context: Context): void {
  const path = '/jobs/:jobId/runs/several/copies';

  app.get(path, { schema: { hide: true, params: jobParams, querystring: runsQuery } }, async (request, reply) => {
    const runs = await firstRuns(context, request, request.params.jobId, request.query);
    return showCopies(context, request, reply, request.params.jobId, { fields: FRESH, runs, levels: [] });
  });

  app.post(path, { schema: { hide: true, params: jobParams } }, (request, reply) =>
    previewed(context, request, reply, request.params.jobId),
  );

  app.post(`${path}/made`, { schema: { hide: true, params: jobParams } }, async (request, reply) => {
    const { jobId } = request.params;
    const typed = typedIn(request);
    const { project } = await jobParts(context, viewerOf(request), jobId);
    const read = readCopyForm(typed.fields, typed.runs, typed.levels, project);
    const tried = await attempt(() =>
      makeCopies(context, viewerOf(request), jobId, read.asked, seenIn(request), formSubmission(request)),
    );
    if (!tried.ok) return previewed(context, request, reply, jobId, tried.trouble);
    const { made } = tried.value;
    const said = made.length === 1 ? `Run ${made[0]} is` : `${made.length} runs are`;
    return goTo(reply, `/jobs/${jobId}/floors`, `${said} made and laid out.`);
  });
}

async function previewed(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  refused?: FormTrouble,
): Promise<FastifyReply> {
  const typed = typedIn(request);
  const { project } = await jobParts(context, viewerOf(request), jobId);
  const read = readCopyForm(typed.fields, typed.runs, typed.levels, project);
  if (read.faults.length > 0) return showCopies(context, request, reply, jobId, typed, { read: read.faults });
  const tried = await attempt(() => previewCopies(context, viewerOf(request), jobId, read.asked));
  const trouble = tried.ok ? refused : tried.trouble;
  return showCopies(context, request, reply, jobId, typed, {
    ...(trouble === undefined ? {} : { trouble }),
    ...(tried.ok ? { preview: tried.value } : {}),
  });
}

interface Tried {
  readonly read?: ReturnType<typeof readCopyForm>['faults'];
  readonly trouble?: FormTrouble;
  readonly preview?: Awaited<ReturnType<typeof previewCopies>>;
}

/** The form, with what came of it. */
export async function showCopies(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  typed: Typed,
  { read = [], trouble, preview }: Tried = {},
): Promise<FastifyReply> {
  const job = await jobParts(context, viewerOf(request), jobId);
  const own = await levelsOf(context, viewerOf(request), jobId, typed.runs);
  const { units } = job.project;
  const path = severalPath(jobId, 'copies');
  const faults = faultsBeside(read, trouble);
  return sendSeveral(context, request, reply, jobId, {
    title: typed.runs.length === 1 ? `Copy run ${typed.runs[0]}` : 'Copy runs',
    isRefused: faults.length > 0,
    trouble,
    content: CopiesPage({
      action: `${path}#preview`,
      csrf: formToken(reply),
      pickHref: severalPath(jobId),
      runs: typed.runs,
      entered: { ...typed.fields },
      faultOf: faultOfField(faults),
      summary: summaryOf(faults, (field) => WORDS[field] ?? field),
      levels: job.levels
        .filter((level) => !own.has(level.id))
        .map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
      chosenLevels: typed.levels,
      example: units === 'ft-in' ? '8 ft or 2438 mm' : '2400 or 2.4 m',
      preview:
        preview === undefined
          ? null
          : await madeProps(context, request, reply, jobId, `${path}/made`, units, typed, preview),
    }),
  });
}

const WORDS: Readonly<Record<string, string>> = {
  runs: 'Runs',
  rows: 'Further rows',
  'pitch.xMm': 'Pitch, east',
  'pitch.yMm': 'Pitch, north',
  levels: 'Other levels',
  step: 'Numbers count on by',
  names: 'Naming',
  supply: 'Supply of the copies',
};
