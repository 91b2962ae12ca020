import type { FastifyReply, FastifyRequest } from 'fastify';
import { crewEntryWord } from '../../../views/pages/crews/crew-form.tsx';
import { CrewsPage, CrewsTools } from '../../../views/pages/crews.tsx';
import { crewsBoard } from '../../actions/boards/crews-board.ts';
import type { Context } from '../../actions/context.ts';
import { setCrewPlan } from '../../actions/crew-plans.ts';
import { CREW_ROWS, readCrewForm, writeCrewForm } from '../../document/crew-plan/form.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { type FragmentTried, fragmentProps } from './settings/fragment.ts';
import { oneForm } from './settings/one-form.ts';

/** Crews over levels, and how the job is manned. */
export function crews(app: App, context: Context): void {
  oneForm(app, {
    path: '/crews',
    read: async (viewer, jobId, fields) => {
      const { levels } = await crewsBoard(context, viewer, jobId);
      const ids = levels.map(({ id }) => id);
      const read = readCrewForm(fields, ids);
      return 'faults' in read ? { fields, faults: read.faults, value: null } : { fields, faults: [], value: read.plan };
    },
    save: async (viewer, jobId, version, plan) =>
      plan === null ? null : setCrewPlan(context, viewer, jobId, version, plan),
    saved: { path: '/crews', words: 'The plan is saved.' },
    show: (...asked) => show(context, ...asked),
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
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
