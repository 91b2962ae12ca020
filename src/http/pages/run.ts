import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RunPage, type RunPageProps, RunStripLive, RunThingsLive, RunTools } from '../../../views/pages/run.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { type RunBoard, runBoard } from '../../actions/boards/run-board.ts';
import type { Context } from '../../actions/context.ts';
import { listSteps, nextSteps } from '../../actions/design-steps.ts';
import { letGoOfHold } from '../../actions/field-holds.ts';
import { release } from '../../actions/releases.ts';
import { compareOf } from '../../actions/revisions.ts';
import type { RevisionDifference } from '../../domain/revision/difference.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, type FormTrouble, formSubmission, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';

export const runParams = z.object({ jobId: z.string(), runId: z.string() });

/** One run. */
export function run(app: App, context: Context): void {
  letGo(app, context);
  app.get(
    '/jobs/:jobId/runs/:runId',
    {
      schema: {
        hide: true,
        params: runParams,
        querystring: z.object({ part: z.enum(['strip', 'things']).optional().catch(undefined) }),
      },
    },
    async (request, reply) => {
      const { jobId, runId } = request.params;
      const { part } = request.query;
      if (part === undefined) return show(context, request, reply);
      const board = await runBoard(context, viewerOf(request), jobId, runId);
      const props = propsOf(context, reply, board, { jobId, runId, difference: null, steps: null });
      const fragment = part === 'strip' ? RunStripLive(props) : RunThingsLive(props);
      return reply.type('text/html; charset=utf-8').send(renderFragment(fragment));
    },
  );

  app.post(
    '/jobs/:jobId/runs/:runId/releases',
    { schema: { hide: true, params: runParams } },
    async (request, reply) => {
      const { jobId, runId } = request.params;
      const tried = await attempt(async () => {
        const viewer = viewerOf(request);
        const { run: of } = await runBoard(context, viewer, jobId, runId);
        const reason = entered(request).reason ?? '';
        return release(context, viewer, jobId, { runs: [of.id], reason }, formSubmission(request));
      });
      if (!tried.ok) return show(context, request, reply, tried.trouble);
      return goTo(
        reply,
        `/jobs/${jobId}/runs/${runId}`,
        `Revision ${tried.value.released[0]?.revision} is released to the floor.`,
      );
    },
  );
}

function letGo(app: App, context: Context): void {
  app.post(
    '/jobs/:jobId/runs/:runId/free-layout',
    { schema: { hide: true, params: runParams } },
    async (request, reply) => {
      const { jobId, runId } = request.params;
      const tried = await attempt(() => letGoOfHold(context, viewerOf(request), jobId, runId, formVersion(request)));
      if (!tried.ok) return show(context, request, reply, tried.trouble);
      return goTo(
        reply,
        `/jobs/${jobId}/runs/${runId}`,
        'Its sections are chosen freely again. The floor keeps what it has until the run is released.',
      );
    },
  );
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble?: FormTrouble,
): Promise<FastifyReply> {
  const { jobId, runId } = runParams.parse(request.params);
  const board = await runBoard(context, viewerOf(request), jobId, runId);
  const { heading, level, standing } = board;
  const { reached } = heading;
  const isComing = reached.may('design') && standing.revision > 0 && standing.changed && board.layout.ok;
  const difference = isComing
    ? (await compareOf(context.database.db, jobId, runId, [standing.revision, 'draft'])).difference
    : null;
  const steps = reached.may('design')
    ? nextSteps(await listSteps(context, viewerOf(request), jobId, board.run.id))
    : null;
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, {
      title: `Run ${board.run.id}`,
      part: 'floors',
      trouble,
      revision: standing.revision === 0 ? 'draft' : String(standing.revision),
      trail: [
        { word: 'Jobs', href: '/jobs' },
        { word: reached.number, href: `/jobs/${jobId}/floors` },
        { word: level.name, href: `/jobs/${jobId}/floors/${level.id}` },
      ],
      tools: RunTools({ jobId, runId, label: board.run.id, mayDesign: reached.may('design') }),
    }),
    RunPage(propsOf(context, reply, board, { jobId, runId, difference, steps })),
  );
}

interface Shown {
  readonly jobId: string;
  readonly runId: string;
  readonly difference: RevisionDifference | null;
  readonly steps: ReturnType<typeof nextSteps> | null;
}

function propsOf(
  context: Context,
  reply: FastifyReply,
  board: RunBoard,
  { jobId, runId, difference, steps }: Shown,
): RunPageProps {
  const { heading, standing, run: of, type, layout, released, revisions, findings, hours, labourBook, runIds } = board;
  const { reached, project } = heading;
  return {
    jobId,
    runId,
    units: project.units,
    currency: project.currency,
    zone: project.timeZone,
    levelName: board.level.name,
    run: of,
    type,
    layout,
    released,
    changed: standing.changed,
    status: standing.status,
    open: standing.open,
    findings,
    hours,
    book: labourBook === null ? null : { version: labourBook.version, policy: labourBook.policy },
    revisions,
    mayMoney: reached.may('money'),
    coverings: board.coverings,
    letGo: reached.may('design') && of.fieldHold !== null ? { csrf: formToken(reply), version: board.version } : null,
    undo:
      steps === null
        ? null
        : {
            ...steps,
            undoHref: (id) => `/jobs/${jobId}/steps/${id}/undo?from=${runId}`,
            stepsHref: `/jobs/${jobId}/steps`,
            csrf: formToken(reply),
            newId: context.newId,
            zone: project.timeZone,
          },
    release: reached.may('design')
      ? {
          jobId,
          runId,
          label: of.id,
          csrf: formToken(reply),
          submissionId: context.newId(),
          revision: standing.revision,
          changed: standing.changed,
          bars: standing.bars,
          difference,
          units: project.units,
        }
      : null,
    runHref: (label) => {
      const id = runIds.get(label);
      return id === undefined ? null : `/jobs/${jobId}/runs/${id}`;
    },
  };
}
