import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { listTools, recordLapse } from '../../actions/tool-lapses.ts';
import { toolLapseSchema, toolLapseViewSchema, toolUseSchema } from '../../document/tool-lapse.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { problems, projectParams, readSubmission } from './conventions.ts';

/** Tools and instruments of the records, and what reopens when one turns out to have been out of calibration. */
export function tools(app: App, context: Context): void {
  const tags = ['Inspections'];
  app.get(
    '/projects/:projectId/tools',
    {
      schema: {
        tags,
        summary: 'Torque tools and instruments that the records name',
        params: projectParams,
        response: { 200: z.object({ items: z.array(toolUseSchema) }), ...problems },
      },
    },
    async (request) => ({ items: await listTools(context, viewerOf(request), request.params.projectId) }),
  );

  app.post(
    '/projects/:projectId/tool-lapses',
    {
      schema: {
        tags,
        summary: 'A tool was found out of calibration: what it touched since it was last good reopens',
        description:
          'Joints reopen at the first torque that was made with it, insulation tests made with it are taken back; their records stay in the book. All or nothing.',
        params: projectParams,
        body: toolLapseSchema,
        response: { 201: toolLapseViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const lapse = await recordLapse(context, viewerOf(request), projectId, request.body, readSubmission(request));
      return reply.code(201).send(lapse);
    },
  );
}
