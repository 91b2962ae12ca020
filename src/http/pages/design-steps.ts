import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { DesignSteps } from '../../../views/pages/design-steps.tsx';
import type { Context } from '../../actions/context.ts';
import { type DesignStepView, listSteps, undoStep } from '../../actions/design-steps.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, type FormTrouble, formSubmission } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string() });
const stepParams = params.extend({ stepId: z.string() });
/** The run whose page the person came from. */
const query = z.object({ from: z.string().optional() });

/** Changes of the design, and taking one back. */
export function designSteps(app: App, context: Context): void {
  app.get('/jobs/:jobId/steps', { schema: { hide: true, params } }, (request, reply) =>
    show(context, request, reply, request.params.jobId),
  );

  app.post(
    '/jobs/:jobId/steps/:stepId/undo',
    { schema: { hide: true, params: stepParams, querystring: query } },
    async (request, reply) => {
      const { jobId, stepId } = request.params;
      const { from } = request.query;
      const tried = await attempt(() => undoStep(context, viewerOf(request), jobId, stepId, formSubmission(request)));
      if (!tried.ok) return show(context, request, reply, jobId, tried.trouble);
      const back = from === undefined ? `/jobs/${jobId}/steps` : `/jobs/${jobId}/runs/${encodeURIComponent(from)}`;
      return goTo(reply, back, said(tried.value));
    },
  );
}

function said({ undoes, touches, action }: DesignStepView): string {
  const what = touches.length === 1 ? touches[0] : `${touches.length} things`;
  if (undoes === null) return `The ${action}.`;
  return action === 'design step undone' ? `Undone: ${what} as before.` : `Done again: ${what} as changed.`;
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  trouble?: FormTrouble,
): Promise<FastifyReply> {
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId);
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, { title: 'Changes of the design', part: 'floors', trouble }),
    DesignSteps({
      steps: await listSteps(context, viewer, jobId),
      undoHref: (id) => `/jobs/${jobId}/steps/${id}/undo`,
      csrf: formToken(reply),
      newId: context.newId,
      zone: heading.project.timeZone,
    }),
  );
}
