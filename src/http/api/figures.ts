import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { getFigures } from '../../actions/figures.ts';
import { figuresWithoutMoney, printFigures } from '../../document/print-figures.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { problems, projectParams, stamp } from './conventions.ts';

export function figuresApi(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/figures',
    {
      schema: {
        tags: ['Figures'],
        summary: 'Layout, takeoff, hours and checks',
        description: 'What `npm run -s figures` prints, from the design as it stands. Money for the office alone.',
        params: projectParams,
        response: { 200: z.looseObject({ format: z.literal('busway-figures/1') }), ...problems },
      },
    },
    async (request, reply) => {
      const { figures, designVersion, reached } = await getFigures(
        context,
        viewerOf(request),
        request.params.projectId,
      );
      stamp(reply, designVersion);
      const printed = printFigures(figures);
      return reply
        .type('application/json')
        .serializer(JSON.stringify)
        .send((reached.may('money') ? printed : figuresWithoutMoney(printed)) as never);
    },
  );
}
