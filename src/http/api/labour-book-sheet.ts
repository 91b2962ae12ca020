import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { exportBook, takeSheet } from '../../actions/labour-book-changes.ts';
import { getLabourBook, labourBookViewSchema } from '../../actions/labour-books.ts';
import { BOOK_HEADINGS } from '../../document/labour-book-sheet/columns.ts';
import { writeTable } from '../../document/lists/write-table.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { changeHeaders, problems, projectParams, readVersion, stamp } from './conventions.ts';

const tags = ['Labour book'];
const path = '/projects/:projectId/labour-book';

/** The sheet that a labour book goes out and in by. Office only: it holds the crew's rates. */
export function labourBookSheet(app: App, context: Context): void {
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
