import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { noFault } from '../../../views/components/fault-of.ts';
import { ShelfPage, type ShelfPageProps } from '../../../views/pages/labour-book/shelf.tsx';
import { Upgrade } from '../../../views/pages/labour-book/upgrade.tsx';
import { inventedWords } from '../../../views/words/invented.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import {
  type BookUpgrade,
  exportBook,
  previewBook,
  previewSheet,
  sheetText,
  takeSheet,
} from '../../actions/labour-book-changes.ts';
import { getShelved, keepBookSchema, keepOnShelf, listShelf, takeFromShelf } from '../../actions/labour-book-shelf.ts';
import { getLabourBook } from '../../actions/labour-books.ts';
import { BOOK_HEADINGS } from '../../document/labour-book-sheet/columns.ts';
import { writeTable } from '../../document/lists/write-table.ts';
import { labourBookWorkbook } from '../../paper/workbooks/labour-book-workbook.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { fileName, sendCsv } from './csv.ts';
import {
  attempt,
  type Entered,
  entered,
  enteredFile,
  type FormTrouble,
  formSubmission,
  formVersion,
  readForm,
} from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { pagerOf } from './pager.ts';

const params = z.object({ jobId: z.string() });
const oneParams = params.extend({ id: z.string() });
const query = z.object({ page: z.coerce.number().int().min(1).default(1).catch(1) });
const BOOKS_A_PAGE = 50;
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** The company's labour books beside the job's own, and the sheet of a book. Office only. */
export function labourBookShelf(app: App, context: Context): void {
  const path = '/jobs/:jobId/labour-book';

  app.get(`${path}/shelf`, { schema: { hide: true, params, querystring: query } }, (request, reply) =>
    show(context, request, reply, {}),
  );

  app.post(`${path}/shelf`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const fields = entered(request);
    const tried = await attempt(async () =>
      keepOnShelf(context, viewerOf(request), jobId, readForm(keepBookSchema, fields), formSubmission(request)),
    );
    if (!tried.ok) return show(context, request, reply, { fields, trouble: tried.trouble });
    const { name, version } = tried.value;
    return goTo(reply, `/jobs/${jobId}/labour-book/shelf`, `${name} ${version} is on the shelf.`);
  });

  app.get(`${path}/shelf/:id`, { schema: { hide: true, params: oneParams } }, async (request, reply) => {
    const { jobId, id } = request.params;
    const viewer = viewerOf(request);
    const { name, version, document } = await getShelved(context, viewer, jobId, id);
    const upgrade = await previewBook(context, viewer, jobId, document);
    const action = `/jobs/${jobId}/labour-book/shelf/${id}`;
    return showUpgrade(context, request, reply, { upgrade, to: version, title: `${name} ${version}`, action });
  });

  app.post(`${path}/shelf/:id`, { schema: { hide: true, params: oneParams } }, async (request, reply) => {
    const { jobId, id } = request.params;
    const tried = await attempt(async () =>
      takeFromShelf(context, viewerOf(request), jobId, formVersion(request) - 1, id),
    );
    if (!tried.ok) return show(context, request, reply, { trouble: tried.trouble });
    return goTo(
      reply,
      `/jobs/${jobId}/hours`,
      'The job works with the book of the shelf, and the hours are worked anew.',
    );
  });

  app.post(`${path}/sheet`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const { text, faults } = await sheetText(enteredFile(request, 'file'), entered(request).text ?? '');
    if (faults.length > 0) return show(context, request, reply, { sheet: { text, faults } });
    const preview = await previewSheet(context, viewerOf(request), jobId, text);
    if (!preview.ok) return show(context, request, reply, { sheet: { text, faults: preview.faults } });
    const { upgrade } = preview;
    const to = versionOf(upgrade) ?? 'the sheet';
    const action = `/jobs/${jobId}/labour-book/sheet/taken`;
    return showUpgrade(context, request, reply, { upgrade, to, title: 'Labour book from a sheet', action, text });
  });

  app.post(`${path}/sheet/taken`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const { text = '' } = entered(request);
    const tried = await attempt(async () =>
      takeSheet(context, viewerOf(request), jobId, formVersion(request) - 1, text),
    );
    if (!tried.ok) return show(context, request, reply, { trouble: tried.trouble, sheet: { text, faults: [] } });
    return goTo(reply, `/jobs/${jobId}/hours`, `Labour book ${tried.value.version} is taken from the sheet.`);
  });

  app.get(`${path}.csv`, { schema: { hide: true, params } }, async (request, reply) => {
    const { rows, number } = await exportBook(context, viewerOf(request), request.params.jobId);
    const cells = rows.map((row) => BOOK_HEADINGS.map((heading) => row[heading] ?? ''));
    return sendCsv(reply, `${number}-labour-book`, writeTable(BOOK_HEADINGS, cells));
  });

  app.get(`${path}.xlsx`, { schema: { hide: true, params } }, async (request, reply) => {
    const { book, rows, number } = await exportBook(context, viewerOf(request), request.params.jobId);
    const at = context.clock();
    const bytes = await labourBookWorkbook({
      title: `${number} – labour book ${book.version}, office only, ${at.toISOString().slice(0, 16)}Z`,
      notice: inventedWords(book.version),
      rows,
      at,
    });
    return reply
      .type(XLSX)
      .header('content-disposition', `attachment; filename="${fileName(`${number}-labour-book`)}.xlsx"`)
      .send(Buffer.from(bytes));
  });
}

function versionOf({ changes }: BookUpgrade): string | undefined {
  return changes.find(({ part, name }) => part === 'book' && name === 'version')?.after;
}

interface Tried {
  readonly fields?: Entered;
  readonly trouble?: FormTrouble;
  readonly sheet?: ShelfPageProps['sheet'];
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  { fields = {}, trouble, sheet = { text: '', faults: [] } }: Tried,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const { page } = query.parse(request.query ?? {});
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'money');
  const listed = await listShelf(context, viewer, jobId, { page, limit: BOOKS_A_PAGE });
  const { document } = await getLabourBook(context, viewer, jobId);
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, { title: 'Labour books of the company', part: 'hours', trouble }),
      status: trouble?.status ?? (sheet.faults.length > 0 ? 422 : 200),
    },
    ShelfPage({
      jobId,
      csrf: formToken(reply),
      submissionId: fields.submissionId ?? context.newId(),
      zone: heading.project.timeZone ?? null,
      own: document?.version ?? null,
      books: listed.items,
      pager: listed.total > BOOKS_A_PAGE ? pagerOf(listed, 'books', `/jobs/${jobId}/labour-book/shelf`, {}) : null,
      entered: fields,
      faultOf: trouble?.faultOf ?? noFault,
      sheet,
    }),
  );
}

async function showUpgrade(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  of: { upgrade: BookUpgrade; to: string; title: string; action: string; text?: string },
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'money');
  const { version, document } = await getLabourBook(context, viewer, jobId);
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, { title: of.title, part: 'hours', revision: `design ${heading.designVersion}` }),
    Upgrade({
      ...of.upgrade,
      currency: heading.project.currency,
      from: document?.version ?? null,
      to: of.to,
      action: of.action,
      csrf: formToken(reply),
      version: version + 1,
      ...(of.text === undefined ? {} : { text: of.text }),
      leaveHref: `/jobs/${jobId}/labour-book/shelf`,
    }),
  );
}
