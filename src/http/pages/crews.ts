import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { crewEntryWord } from '../../../views/pages/crews/crew-form.tsx';
import { CrewsPage, CrewsTools } from '../../../views/pages/crews.tsx';
import { crewsBoard } from '../../actions/boards/crews-board.ts';
import type { Context } from '../../actions/context.ts';
import { setCrewPlan } from '../../actions/crew-plans.ts';
import { CREW_ROWS, readCrewForm, writeCrewForm } from '../../document/crew-plan/form.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { type FragmentTried, fragmentProps } from './settings/fragment.ts';

const params = z.object({ jobId: z.string() });

/** Crews over levels, and how the job is manned. */
export function crews(app: App, context: Context): void {
  const path = '/jobs/:jobId/crews';

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { levels } = await crewsBoard(context, viewer, jobId);
    const read = readCrewForm(
      fields,
      levels.map(({ id }) => id),
    );
    if ('faults' in read) return show(context, request, reply, { fields, faults: read.faults });
    const tried = await attempt(async () => setCrewPlan(context, viewer, jobId, formVersion(request), read.plan));
    if (!tried.ok) return show(context, request, reply, { fields, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/crews`, 'The plan is saved.');
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const board = await crewsBoard(context, viewerOf(request), jobId);
  const { heading, plan } = board;
  const path = `/jobs/${jobId}/crews`;
  const now = writeCrewForm(plan);
  const fragment = fragmentProps(context, request, reply, {
    path,
    settings: path,
    version: board.version,
    tried,
    wordOf: crewEntryWord,
    now,
    removal: null,
  });
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: 'Crews over levels',
        part: 'hours',
        revision: `design ${heading.designVersion}`,
        trouble: tried?.trouble,
        ...(board.schedule === null ? {} : { tools: CrewsTools({ jobId }) }),
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    CrewsPage({
      schedule: board.schedule,
      saved: board.saved,
      book: board.book,
      today: context.clock().toISOString().slice(0, 10),
      form: heading.reached.may('design')
        ? { ...fragment, entered: tried?.fields ?? now, levels: board.levels, rows: CREW_ROWS }
        : null,
    }),
  );
}
