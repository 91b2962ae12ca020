import { z } from 'zod';
import {
  buildCloseout,
  closeoutReadiness,
  readinessQuerySchema,
  readinessViewSchema,
} from '../../actions/closeouts.ts';
import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { sendCloseout } from '../send-closeout.ts';
import { problems, projectParams } from './conventions.ts';

const tags = ['Closeout'];

export function closeoutApi(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/closeout',
    {
      schema: {
        tags,
        summary: 'The closeout package',
        description:
          'A ZIP archive: the book (PDF), registers (CSV), the job document without money, strips (SVG), the audit trail, and their SHA-256 sums. The same record gives the same bytes. It holds no money, whoever asks.',
        params: projectParams,
        response: { 200: z.any().meta({ type: 'string', format: 'binary' }).describe('application/zip'), ...problems },
      },
    },
    async (request, reply) =>
      sendCloseout(reply, await buildCloseout(context, viewerOf(request), request.params.projectId)),
  );

  app.get(
    '/projects/:projectId/closeout/readiness',
    {
      schema: {
        tags,
        summary: 'What the closeout asks for, and what is there',
        description: 'Evidence present against evidence asked for, with every gap named.',
        params: projectParams,
        querystring: readinessQuerySchema,
        response: { 200: readinessViewSchema, ...problems },
      },
    },
    (request) => closeoutReadiness(context, viewerOf(request), request.params.projectId, request.query),
  );
}
