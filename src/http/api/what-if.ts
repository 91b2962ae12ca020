import type { Context } from '../../actions/context.ts';
import { whatIf } from '../../actions/what-ifs.ts';
import { whatIfSchema } from '../../document/what-if/schema.ts';
import { besideSchema, printBeside } from '../../document/what-if/totals-schema.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { problems, projectParams, stamp } from './conventions.ts';

/** A change beside the job as it stands. It is asked by POST because it may be long; nothing is written. */
export function whatIfApi(app: App, context: Context): void {
  app.post(
    '/projects/:projectId/what-if',
    {
      schema: {
        tags: ['Figures'],
        summary: 'What the job would come to with a change, beside what it comes to',
        description: 'The job is not changed and nothing is kept. ETag: the design that the base was worked from.',
        params: projectParams,
        body: whatIfSchema,
        response: { 200: besideSchema, ...problems },
      },
    },
    async (request, reply) => {
      const answer = await whatIf(context, viewerOf(request), request.params.projectId, request.body);
      stamp(reply, answer.designVersion);
      return printBeside(answer);
    },
  );
}
