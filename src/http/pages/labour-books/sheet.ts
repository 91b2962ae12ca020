import { z } from 'zod';
import { inventedWords } from '../../../../views/words/invented.ts';
import type { Context } from '../../../actions/context.ts';
import {
  type BookUpgrade,
  exportBook,
  previewSheet,
  sheetText,
  takeSheet,
} from '../../../actions/labour-book-changes.ts';
import { BOOK_HEADINGS } from '../../../document/labour-book-sheet/columns.ts';
import { writeTable } from '../../../document/lists/write-table.ts';
import { labourBookWorkbook } from '../../../paper/workbooks/labour-book-workbook.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { fileName, sendCsv } from '../csv.ts';
import { attempt, entered, enteredFile, formVersion } from '../form.ts';
import { goTo } from '../page.ts';
import { showShelf } from './show-shelf.ts';
import { showUpgrade } from './show-upgrade.ts';

const params = z.object({ jobId: z.string() });
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** A labour book as a sheet, out and in: what comes in is shown before it is taken. Office only. */
export function labourBookSheet(app: App, context: Context): void {
  const path = '/jobs/:jobId/labour-book';

  app.post(`${path}/sheet`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const { text, faults } = await sheetText(enteredFile(request, 'file'), entered(request).text ?? '');
    if (faults.length > 0) return showShelf(context, request, reply, { sheet: { text, faults } });
    const preview = await previewSheet(context, viewerOf(request), jobId, text);
    if (!preview.ok) return showShelf(context, request, reply, { sheet: { text, faults: preview.faults } });
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
    if (!tried.ok) return showShelf(context, request, reply, { trouble: tried.trouble, sheet: { text, faults: [] } });
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
