import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { previewBook } from '../../actions/labour-book-changes.ts';
import { getShelved, keepBookSchema, keepOnShelf, listShelf, takeFromShelf } from '../../actions/labour-book-shelf.ts';
import { getLabourBook, labourBookViewSchema } from '../../actions/labour-books.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import { shelvedBookSchema, shelvedBookWholeSchema } from '../../actions/shelved-books.ts';
import { besideSchema, printBeside } from '../../document/what-if/totals-schema.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import {
  changeHeaders,
  createHeaders,
  itemParams,
  problems,
  projectParams,
  readSubmission,
  readVersion,
  stamp,
} from './conventions.ts';

const tags = ['Labour book'];
const path = '/projects/:projectId/labour-book';

const upgradeSchema = besideSchema.extend({
  changes: z
    .array(
      z.object({
        part: z.string(),
        name: z.string(),
        length: z.string(),
        column: z.string(),
        before: z.string(),
        after: z.string(),
      }),
    )
    .describe('Every value that differs, as its sheet says it; empty where a book does not have it'),
});

/** The shelf of the company's labour books. Office only. */
export function labourBookShelf(app: App, context: Context): void {
  app.get(
    `${path}/shelf`,
    {
      schema: {
        tags,
        summary: 'The company’s labour books, newest first',
        params: projectParams,
        querystring: pageQuerySchema,
        response: { 200: listOf(shelvedBookSchema), ...problems },
      },
    },
    async (request) => listShelf(context, viewerOf(request), request.params.projectId, request.query),
  );

  app.post(
    `${path}/shelf`,
    {
      schema: {
        tags,
        summary: 'Keep the job’s labour book on the shelf as a version',
        params: projectParams,
        headers: createHeaders,
        body: keepBookSchema,
        response: { 201: shelvedBookSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const kept = await keepOnShelf(context, viewerOf(request), projectId, request.body, readSubmission(request));
      return reply.status(201).send(kept);
    },
  );

  app.get(
    `${path}/shelf/:id`,
    {
      schema: {
        tags,
        summary: 'One labour book of the shelf',
        params: itemParams,
        response: { 200: shelvedBookWholeSchema, ...problems },
      },
    },
    async (request) => getShelved(context, viewerOf(request), request.params.projectId, request.params.id),
  );

  app.get(
    `${path}/shelf/:id/difference`,
    {
      schema: {
        tags,
        summary: 'What taking it would change: every value, and what the job comes to before and after',
        params: itemParams,
        response: { 200: upgradeSchema, ...problems },
      },
    },
    async (request) => {
      const { projectId, id } = request.params;
      const viewer = viewerOf(request);
      const { document } = await getShelved(context, viewer, projectId, id);
      return view(await previewBook(context, viewer, projectId, document));
    },
  );

  app.put(
    `${path}/from-shelf/:id`,
    {
      schema: {
        tags,
        summary: 'Take it into the job; If-Match is the version of the job’s own book',
        params: itemParams,
        headers: changeHeaders,
        response: { 200: labourBookViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const viewer = viewerOf(request);
      await takeFromShelf(context, viewer, projectId, readVersion(request), id);
      const now = await getLabourBook(context, viewer, projectId);
      stamp(reply, now.version);
      return now;
    },
  );
}

function view(upgrade: Awaited<ReturnType<typeof previewBook>>): z.infer<typeof upgradeSchema> {
  return { ...printBeside(upgrade), changes: [...upgrade.changes] };
}
