import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { BuswayTypePage } from '../../../views/pages/settings/busway-type.tsx';
import { typeEntryWord } from '../../../views/words/type-entries.ts';
import { changeBuswayType, createBuswayType, getBuswayType, removeBuswayType } from '../../actions/busway-types.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { readTypeForm, writeTypeForm } from '../../document/type-form.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formSubmission, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { type FragmentTried, fragmentProps, lengthExample } from './settings/fragment.ts';

const params = z.object({ jobId: z.string(), typeId: z.string() });
const NEW = 'new';
/** What a sheet that says nothing of it has. */
const BLANK = { poles: '3', neutral: 'full', 'fittings.elbow.handed': 'yes', 'fittings.tee.handed': 'yes' };

/** A busway type as a form; `new` for one that is not there yet. */
export function typeEdit(app: App, context: Context): void {
  const path = '/jobs/:jobId/settings/types/:typeId';

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, typeId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { project } = await jobHeading(context, viewer, jobId, 'design');
    const before = typeId === NEW ? null : (await getBuswayType(context, viewer, jobId, typeId)).document;
    const { type, faults } = readTypeForm(fields, project, before);
    if (faults.length > 0) return show(context, request, reply, { fields, faults });
    const tried = await attempt(async () =>
      typeId === NEW
        ? createBuswayType(context, viewer, jobId, type, formSubmission(request))
        : changeBuswayType(context, viewer, jobId, typeId, formVersion(request), type),
    );
    if (!tried.ok) return show(context, request, reply, { fields, faults: [], trouble: tried.trouble });
    return goTo(
      reply,
      `/jobs/${jobId}/settings#types`,
      `Busway type ${type.id} is saved, and its runs are laid out anew.`,
    );
  });

  app.post(`${path}/removal`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, typeId } = request.params;
    const tried = await attempt(async () =>
      removeBuswayType(context, viewerOf(request), jobId, typeId, formVersion(request)),
    );
    if (!tried.ok) return show(context, request, reply, { fields: {}, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/settings#types`, 'The busway type is removed.');
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId, typeId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'design');
  const current = typeId === NEW ? null : await getBuswayType(context, viewer, jobId, typeId);
  const now = current === null ? null : writeTypeForm(current.document, heading.project);
  const settings = `/jobs/${jobId}/settings`;
  const path = `${settings}/types/${typeId}`;
  const isTyped = tried !== null && Object.keys(tried.fields).length > 0;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: current === null ? 'Add a busway type' : `Busway type ${current.document.id}`,
        part: 'settings',
        trouble: tried?.trouble,
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    BuswayTypePage({
      ...fragmentProps(context, request, reply, {
        path,
        settings: `${settings}#types`,
        version: current?.version ?? null,
        tried,
        wordOf: typeEntryWord,
        now,
        removal:
          current === null
            ? null
            : {
                action: `${path}/removal`,
                what: `type ${current.document.id}`,
                question: 'It leaves the job. A type that runs are made of is kept.',
              },
      }),
      entered: isTyped ? tried.fields : (now ?? BLANK),
      example: lengthExample(heading.project.units),
      currency: heading.project.currency,
    }),
  );
}
