import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
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
import { attempt, entered, formVersion } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { goTo, sendPage } from '../page.ts';
import { type FragmentTried, fragmentProps, lengthExample } from '../settings/fragment.ts';

const params = z.object({ jobId: z.string() });

/** The job's rules for ordering. */
export function rules(app: App, context: Context): void {
  const path = '/jobs/:jobId/takeoff/rules';

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const { project } = await jobHeading(context, viewer, jobId, 'design');
    const { ordering, fields, faults } = readOrderingForm(entered(request), project);
    if (faults.length > 0) return show(context, request, reply, { fields, faults });
    const tried = await attempt(async () => setOrdering(context, viewer, jobId, formVersion(request), ordering));
    if (!tried.ok) return show(context, request, reply, { fields, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/takeoff/order`, 'The rules are saved.');
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
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
