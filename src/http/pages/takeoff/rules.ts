import type { FastifyReply, FastifyRequest } from 'fastify';
import { OrderingForm } from '../../../../views/pages/takeoff/ordering-form.tsx';
import { orderingEntryWord } from '../../../../views/words/ordering-entries.ts';
import type { Context } from '../../../actions/context.ts';
import { figuresOf } from '../../../actions/figures.ts';
import { jobHeading } from '../../../actions/job-heading.ts';
import { getOrdering, setOrdering } from '../../../actions/orderings.ts';
import { rowsIn } from '../../../document/form/row-form.ts';
import type { OrderingDocument } from '../../../document/job-document.ts';
import { readOrderingForm, writeOrderingForm } from '../../../document/ordering-form.ts';
import type { Job } from '../../../domain/model.ts';
import { firstTools } from '../../../domain/ordering/crew-tools.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { type FragmentTried, fragmentProps, lengthExample } from '../settings/fragment.ts';
import { oneForm } from '../settings/one-form.ts';

/** The job's rules for ordering. */
export function rules(app: App, context: Context): void {
  oneForm(app, {
    path: '/takeoff/rules',
    read: async (viewer, jobId, typed) => {
      const { project } = await jobHeading(context, viewer, jobId, 'design');
      const { ordering: value, ...read } = readOrderingForm(typed, project);
      return { value, ...read };
    },
    save: (viewer, jobId, version, value) => setOrdering(context, viewer, jobId, version, value),
    saved: { path: '/takeoff/order', words: 'The rules are saved.' },
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
  const heading = await jobHeading(context, viewer, jobId, 'design');
  const { version, document } = await getOrdering(context, viewer, jobId);
  const { job } = await figuresOf(context.database.db, jobId);
  const tools = document?.tools ?? toDocument(job);
  const now = writeOrderingForm({ ...document, tools }, heading.project);
  const shown = tried?.fields ?? now;
  const path = `/jobs/${jobId}/takeoff/rules`;
  const more = (group: string, least: number) => Math.max(least, rowsIn(shown, group).length + 2);
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: 'Rules for ordering',
        part: 'takeoff',
        revision: `design ${heading.designVersion}`,
        trouble: tried?.trouble,
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    OrderingForm({
      ...fragmentProps(context, request, reply, {
        path,
        settings: `/jobs/${jobId}/takeoff/order`,
        version,
        tried,
        wordOf: orderingEntryWord,
        now,
        removal: null,
      }),
      entered: shown,
      types: job.types.map(({ id }) => id),
      lengthExample: lengthExample(heading.project.units),
      toolsSuggested: document?.tools === undefined,
      rows: { spares: more('spares', 5), leadDays: more('leadDays', 4), tools: more('tools', 4) },
    }),
  );
}

function toDocument(job: Job): NonNullable<OrderingDocument['tools']> {
  return firstTools(job).map(({ tool, perCrew, activity, note }) => ({
    tool,
    perCrew,
    ...(activity === null ? {} : { activity }),
    ...(note === null ? {} : { note }),
  }));
}
