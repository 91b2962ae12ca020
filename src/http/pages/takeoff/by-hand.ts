import type { FastifyReply, FastifyRequest } from 'fastify';
import { ExtrasForm } from '../../../../views/pages/takeoff/extras-form.tsx';
import { orderingEntryWord } from '../../../../views/words/ordering-entries.ts';
import type { Context } from '../../../actions/context.ts';
import { getExtras, setExtras } from '../../../actions/extras.ts';
import { jobHeading } from '../../../actions/job-heading.ts';
import { listLevels } from '../../../actions/levels.ts';
import { readExtrasForm, writeExtrasForm } from '../../../document/extras-form.ts';
import { rowsIn } from '../../../document/form/row-form.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { type FragmentTried, fragmentProps } from '../settings/fragment.ts';
import { oneForm } from '../settings/one-form.ts';

/** Lines that the estimator adds by hand. Office only: they may have prices. */
export function byHand(app: App, context: Context): void {
  oneForm(app, {
    path: '/takeoff/by-hand',
    read: async (viewer, jobId, typed) => {
      const { project } = await jobHeading(context, viewer, jobId, 'money');
      const { extras: value, ...read } = readExtrasForm(typed, project);
      return { value, ...read };
    },
    save: (viewer, jobId, version, value) => setExtras(context, viewer, jobId, version, value),
    saved: { path: '/takeoff', words: 'The lines by hand are saved.' },
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
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'money');
  const { version, document } = await getExtras(context, viewer, jobId);
  const levels = await listLevels(context, viewer, jobId, { page: 1, limit: 500 });
  const now = writeExtrasForm(document, heading.project);
  const shown = tried?.fields ?? now;
  const path = `/jobs/${jobId}/takeoff/by-hand`;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: 'Lines by hand',
        part: 'takeoff',
        revision: `design ${heading.designVersion}`,
        trouble: tried?.trouble,
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    ExtrasForm({
      ...fragmentProps(context, request, reply, {
        path,
        settings: `/jobs/${jobId}/takeoff`,
        version,
        tried,
        wordOf: orderingEntryWord,
        now,
        removal: null,
      }),
      entered: shown,
      levels: levels.items.map(({ document: { id, name } }) => ({ id, name })),
      currency: heading.project.currency,
      rows: Math.max(5, rowsIn(shown, 'extras').length + 2),
    }),
  );
}
