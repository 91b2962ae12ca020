import { z } from 'zod';
import { auditEntrySchema, listAudit } from '../../actions/audit-trail.ts';
import type { Context } from '../../actions/context.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { problems, projectParams } from './conventions.ts';

export function auditTrail(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/audit',
    {
      schema: {
        tags: ['Audit'],
        summary: 'Who changed what, and when',
        params: projectParams,
        querystring: pageQuerySchema,
        response: {
          200: listOf(auditEntrySchema).extend({
            firstBreak: z.number().int().nullable().describe('Where the hash chain first fails; null when it holds.'),
          }),
          ...problems,
        },
      },
    },
    (request) => listAudit(context, viewerOf(request), request.params.projectId, request.query),
  );
}
