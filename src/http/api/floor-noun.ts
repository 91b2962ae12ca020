import { z } from 'zod';
import type { FloorFilter } from '../../actions/cards/lists.ts';
import type { Card } from '../../actions/cards.ts';
import type { Context, Viewer } from '../../actions/context.ts';
import { type Listed, listOf, pageQuerySchema } from '../../actions/paging.ts';
import type { SubjectAt } from '../../actions/records/subject-at.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { itemParams, problems, projectParams, stamp } from './conventions.ts';

/** A kind of thing of the floor: listed, and read as a card. What happens to it is recorded, never written here. */
export interface FloorNoun<Subject extends SubjectAt['subject'], Row, Printed> {
  readonly path: string;
  readonly tag: string;
  readonly one: string;
  readonly states: readonly [string, ...string[]];
  readonly row: z.ZodType;
  readonly card: z.ZodType;
  readonly list: (context: Context, viewer: Viewer, projectId: string, filter: FloorFilter) => Promise<Listed<Row>>;
  readonly get: (context: Context, viewer: Viewer, projectId: string, id: string) => Promise<Card<Subject>>;
  readonly print: (card: Card<Subject>) => Printed;
}

export function floorNoun<Subject extends SubjectAt['subject'], Row, Printed>(
  app: App,
  context: Context,
  noun: FloorNoun<Subject, Row, Printed>,
): void {
  app.get(
    `/projects/:projectId/${noun.path}`,
    {
      schema: {
        tags: [noun.tag],
        summary: `${noun.tag} of the released runs of a job`,
        params: projectParams,
        querystring: pageQuerySchema.extend({
          run: z.string().optional().describe('The run in the job document, "F1-R1-A".'),
          level: z.string().optional(),
          state: z.enum(noun.states).optional(),
          retired: z.stringbool().optional().describe('Those that have left the design.'),
        }),
        response: { 200: listOf(noun.row), ...problems },
      },
    },
    (request) => noun.list(context, viewerOf(request), request.params.projectId, request.query),
  );

  app.get(
    `/projects/:projectId/${noun.path}/:id`,
    {
      schema: {
        tags: [noun.tag],
        summary: `The card of one ${noun.one}`,
        params: itemParams,
        response: { 200: noun.card, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const card = await noun.get(context, viewerOf(request), projectId, id);
      stamp(reply, card.at.site.version);
      return noun.print(card);
    },
  );
}
