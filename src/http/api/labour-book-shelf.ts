import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { exportBook, previewBook, takeSheet } from '../../actions/labour-book-changes.ts';
import {
  getShelved,
  keepBookSchema,
  keepOnShelf,
  listShelf,
  shelvedBookSchema,
  shelvedBookWholeSchema,
  takeFromShelf,
} from '../../actions/labour-book-shelf.ts';
import { getLabourBook, labourBookViewSchema } from '../../actions/labour-books.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import { BOOK_HEADINGS } from '../../document/labour-book-sheet/columns.ts';
import { writeTable } from '../../document/lists/write-table.ts';
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

/** The shelf of the company's labour books, and the sheet that a book goes out and in by. Office only. */
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

  app.get(
    `${path}/sheet`,
    {
      schema: {
        tags,
        summary: 'The labour book as the rows of its sheet, CSV',
        params: projectParams,
        response: { 200: z.string(), ...problems },
      },
    },
    async (request, reply) => {
      const { rows } = await exportBook(context, viewerOf(request), request.params.projectId);
      const text = writeTable(
        BOOK_HEADINGS,
        rows.map((row) => BOOK_HEADINGS.map((heading) => row[heading] ?? '')),
      );
      return reply.type('text/csv; charset=utf-8').send(text);
    },
  );

  app.put(
    `${path}/sheet`,
    {
      schema: {
        tags,
        summary: 'Set the labour book from the rows of its sheet, whole or not at all',
        params: projectParams,
        headers: changeHeaders,
        body: z.strictObject({ text: z.string().max(2_000_000).describe('CSV, or cells separated by tabs') }),
        response: { 200: labourBookViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const viewer = viewerOf(request);
      await takeSheet(context, viewer, projectId, readVersion(request), request.body.text);
      const now = await getLabourBook(context, viewer, projectId);
      stamp(reply, now.version);
      return now;
    },
  );
}

function view(upgrade: Awaited<ReturnType<typeof previewBook>>): z.infer<typeof upgradeSchema> {
  return { ...printBeside(upgrade), changes: [...upgrade.changes] };
}
