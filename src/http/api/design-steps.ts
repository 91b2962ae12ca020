import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { designStepSchema, listSteps, undoStep } from '../../actions/design-steps.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { createHeaders, itemParams, problems, projectParams, readSubmission } from './conventions.ts';

/** Changes of a design, each of which can be undone. */
export function designSteps(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/design-steps',
    {
      schema: {
        tags: ['Runs'],
        summary: 'The last hundred changes of the design, newest first',
        params: projectParams,
        querystring: z.object({ run: z.string().optional().describe('Those that touch this run, by its key.') }),
        response: { 200: z.object({ items: z.array(designStepSchema) }), ...problems },
      },
    },
    async (request) => ({
      items: await listSteps(context, viewerOf(request), request.params.projectId, request.query.run),
    }),
  );

  app.post(
    '/projects/:projectId/design-steps/:id/undo',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Take one change of the design back',
        description:
          'A step itself, so that undoing it does the change again. Refused where somebody has changed the same thing since. Released pieces stay until the next release.',
        params: itemParams,
        headers: createHeaders,
        response: { 201: designStepSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      return reply.code(201).send(await undoStep(context, viewerOf(request), projectId, id, readSubmission(request)));
    },
  );
}
