import type { FastifyReply, FastifyRequest } from 'fastify';
import { PartnersPage } from '../../../../views/pages/several/partners.tsx';
import type { Context } from '../../../actions/context.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { makePartners, previewPartners } from '../../../actions/run-partners.ts';
import { readPartnerForm } from '../../../document/several/read-partner-form.ts';
import type { App } from '../../app-type.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, type FormTrouble, formSubmission } from '../form.ts';
import { goTo } from '../page.ts';
import { madeProps } from './made-props.ts';
import { firstRuns, jobParams, runsQuery, seenIn, sendSeveral, severalPath } from './sheet.ts';
import { faultOfField, faultsBeside, summaryOf, type Typed, typedIn } from './typed.ts';

const FRESH = { way: 'axis-left', taps: 'yes', pairTaps: 'yes', branches: 'yes' };

/** The partners of runs on the other feed side: the form, what it would make, and the making. */
export function partners(app: App, context: Context): void {
  const path = '/jobs/:jobId/runs/several/partners';

  app.get(path, { schema: { hide: true, params: jobParams, querystring: runsQuery } }, async (request, reply) => {
    const runs = await firstRuns(context, request, request.params.jobId, request.query);
    return showPartners(context, request, reply, request.params.jobId, { fields: FRESH, runs, levels: [] });
  });

  app.post(path, { schema: { hide: true, params: jobParams } }, (request, reply) =>
    previewed(context, request, reply, request.params.jobId),
  );

  app.post(`${path}/made`, { schema: { hide: true, params: jobParams } }, async (request, reply) => {
    const { jobId } = request.params;
    const typed = typedIn(request);
    const { project } = await jobParts(context, viewerOf(request), jobId);
    const read = readPartnerForm(typed.fields, typed.runs, project);
    const tried = await attempt(() =>
      makePartners(context, viewerOf(request), jobId, read.asked, seenIn(request), formSubmission(request)),
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
  const read = readPartnerForm(typed.fields, typed.runs, project);
  if (read.faults.length > 0) return showPartners(context, request, reply, jobId, typed, { read: read.faults });
  const tried = await attempt(() => previewPartners(context, viewerOf(request), jobId, read.asked));
  const trouble = tried.ok ? refused : tried.trouble;
  return showPartners(context, request, reply, jobId, typed, {
    ...(trouble === undefined ? {} : { trouble }),
    ...(tried.ok ? { preview: tried.value } : {}),
  });
}

interface Tried {
  readonly read?: ReturnType<typeof readPartnerForm>['faults'];
  readonly trouble?: FormTrouble;
  readonly preview?: Awaited<ReturnType<typeof previewPartners>>;
}

/** The form, with what came of it. */
export async function showPartners(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  typed: Typed,
  { read = [], trouble, preview }: Tried = {},
): Promise<FastifyReply> {
  const job = await jobParts(context, viewerOf(request), jobId);
  const { units } = job.project;
  const path = severalPath(jobId, 'partners');
  const faults = faultsBeside(read, trouble);
  return sendSeveral(context, request, reply, jobId, {
    title: typed.runs.length === 1 ? `Partner of run ${typed.runs[0]}` : 'Partners of runs',
    isRefused: faults.length > 0,
    trouble,
    content: PartnersPage({
      action: `${path}#preview`,
      csrf: formToken(reply),
      pickHref: severalPath(jobId),
      runs: typed.runs,
      entered: { ...typed.fields },
      faultOf: faultOfField(faults),
      summary: summaryOf(faults, (field) => WORDS[field] ?? field),
      example: units === 'ft-in' ? '1 ft or 300 mm' : '300 or 0.3 m',
      preview:
        preview === undefined
          ? null
          : await madeProps(context, request, reply, jobId, `${path}/made`, units, typed, preview),
    }),
  });
}

const WORDS: Readonly<Record<string, string>> = {
  runs: 'Runs',
  'way.awayMm': 'From the run to the axis',
  'way.atMm': 'The line stands at',
  'way.xMm': 'Beside it, east',
  'way.yMm': 'Beside it, north',
  names: 'Naming',
  supply: 'Supply of the partners',
};
