import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { PickPage } from '../../../views/pages/several/pick.tsx';
import type { Context } from '../../actions/context.ts';
import { jobParts } from '../../actions/job-parts.ts';
import { listRuns } from '../../actions/runs.ts';
import { MOST_MADE } from '../../document/several/plan.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { entered, type FormTrouble } from './form.ts';
import { pagerOf, withQuery } from './pager.ts';
import { CHANGES } from './several/changes.ts';
import { COPIES } from './several/copies.ts';
import { PARTNERS } from './several/partners.ts';
import { type Round, roundRoutes, showRound } from './several/round.ts';
import { jobParams, sendSeveral, severalPath } from './several/sheet.ts';
import { typedIn } from './several/typed.ts';

const query = z.object({
  level: z.string().max(64).default(''),
  type: z.string().max(64).default(''),
  side: z.enum(['', 'A', 'B']).default('').catch(''),
  q: z.string().max(64).default(''),
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
type Asked = z.infer<typeof query>;

const A_PAGE = 100;

/** Several runs at once: tick them, then copy them, make their partners, or change them together. */
export function severalRuns(app: App, context: Context): void {
  const path = '/jobs/:jobId/runs/several';

  app.get(path, { schema: { hide: true, params: jobParams, querystring: query } }, (request, reply) =>
    showPick(context, request, reply, request.params.jobId, request.query),
  );

  app.post(path, { schema: { hide: true, params: jobParams, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const fields = entered(request);
    const runs =
      fields.all === 'yes'
        ? (await listed(context, request, jobId, request.query, MOST_MADE)).items.map((row) => row.key)
        : typedIn(request).runs;
    if (runs.length === 0) return showPick(context, request, reply, jobId, request.query, NOTHING_TICKED);
    const begin = <A, P>(round: Round<A, P>) =>
      showRound(context, request, reply, round, { fields: round.fresh, runs, levels: [] });
    if (fields.do === 'changes') return begin(CHANGES);
    return fields.do === 'partners' ? begin(PARTNERS) : begin(COPIES);
  });

  roundRoutes(app, context, COPIES);
  roundRoutes(app, context, PARTNERS);
  roundRoutes(app, context, CHANGES);
}

const NOTHING_TICKED: FormTrouble = {
  refusal: { code: 'work-refused', what: 'No run is ticked', remedy: '' },
  status: 422,
  notice: 'No run is ticked. Tick those that you mean, or all at the foot of the list.',
  faults: [],
  faultOf: () => undefined,
};

function listed(context: Context, request: FastifyRequest, jobId: string, asked: Asked, limit: number) {
  const { level, type, side, q } = asked;
  return listRuns(context, viewerOf(request), jobId, {
    ...(level === '' ? {} : { level }),
    ...(type === '' ? {} : { type }),
    ...(side === '' ? {} : { side }),
    q,
    page: limit === A_PAGE ? asked.page : 1,
    limit,
  });
}

async function showPick(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  asked: Asked,
  trouble?: FormTrouble,
): Promise<FastifyReply> {
  const job = await jobParts(context, viewerOf(request), jobId);
  const list = await listed(context, request, jobId, asked, A_PAGE);
  const { page: _page, ...filter } = asked;
  const path = severalPath(jobId);
  return sendSeveral(context, request, reply, jobId, {
    title: 'Several runs',
    isRefused: trouble !== undefined,
    trouble,
    content: PickPage({
      path,
      action: withQuery(path, filter),
      csrf: formToken(reply),
      units: job.project.units,
      runs: list.items,
      total: list.total,
      pager: list.total > A_PAGE ? pagerOf(list, 'runs', path, filter) : null,
      filter,
      levels: job.levels.map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
      types: job.buswayTypes.map((type) => ({ value: type.id, word: type.id })),
    }),
  });
}
