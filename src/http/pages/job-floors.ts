import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { FloorsLive, FloorsPage, type FloorsPageProps, FloorsTools } from '../../../views/pages/job-floors.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { floorPlans } from '../../actions/boards/floor-plans.ts';
import { type FloorsBoard, floorsBoard, RUNS_A_PAGE } from '../../actions/boards/floors-board.ts';
import type { Context } from '../../actions/context.ts';
import { release } from '../../actions/releases.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, type FormTrouble, formSubmission } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { pagerOf, withQuery } from './pager.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({
  floor: z.string().max(200).default(''),
  page: z.coerce.number().int().min(1).default(1).catch(1),
  part: z.string().optional(),
});

/** The job by floor, and the release of runs to it. */
export function jobFloors(app: App, context: Context): void {
  app.get('/jobs/:jobId/floors', { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    if (request.query.part !== 'board') return show(context, request, reply, jobId, request.query);
    const props = await propsOf(context, request, reply, jobId, request.query);
    return reply.type('text/html; charset=utf-8').send(renderFragment(FloorsLive(props)));
  });

  app.post('/jobs/:jobId/releases', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const { run, reason = '' } = entered(request);
    const tried = await attempt(() =>
      release(
        context,
        viewerOf(request),
        jobId,
        { ...(run === undefined ? {} : { runs: [run] }), reason },
        formSubmission(request),
      ),
    );
    if (!tried.ok) return show(context, request, reply, jobId, query.parse({}), tried.trouble);
    const { released } = tried.value;
    const said = released.length === 1 ? `Run ${released[0]?.run} is` : `${released.length} runs are`;
    return goTo(reply, `/jobs/${jobId}/floors`, `${said} released to the floor.`);
  });
}

type Asked = z.infer<typeof query>;

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  asked: Asked,
  trouble?: FormTrouble,
): Promise<FastifyReply> {
  const board = await floorsBoard(context, viewerOf(request), jobId, asked);
  const props = await propsFor(board, context, reply, jobId);
  return sendPage(
    request,
    reply,
    jobSheet(context, board.heading, {
      title: board.heading.project.name,
      part: 'floors',
      trouble,
      tools: FloorsTools({ jobId, mayDesign: props.mayDesign }),
    }),
    FloorsPage(props),
  );
}

async function propsOf(context: Context, request: FastifyRequest, reply: FastifyReply, jobId: string, asked: Asked) {
  const board = await floorsBoard(context, viewerOf(request), jobId, asked);
  return propsFor(board, context, reply, jobId);
}

async function propsFor(
  board: FloorsBoard,
  context: Context,
  reply: FastifyReply,
  jobId: string,
): Promise<FloorsPageProps> {
  const { heading, floors, whole, shown, chosen, releasable } = board;
  const path = `/jobs/${jobId}/floors`;
  const plan = chosen === null ? null : await floorPlans(context, shown[0]?.runs ?? []);
  return {
    jobId,
    units: heading.project.units,
    floors,
    whole,
    shown: shown.map((one) => ({
      floor: one.floor,
      runs: one.runs,
      plan: plan === null ? null : plan.map((run) => ({ ...run, href: `/jobs/${jobId}/runs/${run.runId}` })),
      pager:
        one.total > RUNS_A_PAGE
          ? pagerOf({ items: one.runs, total: one.total, page: one.page, limit: RUNS_A_PAGE }, 'runs', path, {
              floor: one.floor.key,
            })
          : null,
    })),
    chosen,
    mayDesign: heading.reached.may('design'),
    release: heading.reached.may('design')
      ? { jobId, csrf: formToken(reply), submissionId: context.newId(), ...releasable }
      : null,
    liveHref: withQuery(path, { part: 'board', floor: chosen ?? '', page: String(shown[0]?.page ?? 1) }),
  };
}
