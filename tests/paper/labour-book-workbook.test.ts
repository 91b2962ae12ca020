import ExcelJs from 'exceljs';
import { expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { bookRows } from '../../src/document/labour-book-sheet/book-rows.ts';
import { BOOK_HEADINGS } from '../../src/document/labour-book-sheet/columns.ts';
import { readBookSheet } from '../../src/document/labour-book-sheet/read-book-sheet.ts';
import { isWorkbook, readBookWorkbook } from '../../src/document/labour-book-sheet/read-book-workbook.ts';
import { labourBookWorkbook } from '../../src/paper/workbooks/labour-book-workbook.ts';

const job = demoJob();
const book = {
  ...job.labourBook!,
  crew: [...job.labourBook!.crew!, { role: '=1+1', number: 1, ratePerHour: 1_05, effectiveness: 0.3333333333333333 }],
};
const at = new Date('2026-05-12T13:00:00Z');
const notice = 'This book is invented.';
const write = () => labourBookWorkbook({ title: 'T & Co', notice, rows: bookRows(book, job.project), at });
async function opened(bytes: Uint8Array): Promise<ExcelJs.Worksheet> {
  const workbook = new ExcelJs.Workbook();
  await workbook.xlsx.load(bytes.slice().buffer);
  return workbook.worksheets[0]!;
}
async function saved(sheet: ExcelJs.Worksheet): Promise<Uint8Array> {
  return new Uint8Array(await sheet.workbook.xlsx.writeBuffer());
}
async function read(bytes: Uint8Array) {
  const workbook = await readBookWorkbook(bytes);
  return workbook.ok ? readBookSheet(workbook.text, job) : workbook;
}

test('a book goes out as a workbook and comes back the same, to the last figure', async () => {
  const bytes = await write();
  expect(isWorkbook(bytes)).toBe(true);
  expect(await read(bytes)).toEqual({ ok: true, book, questions: [] });
});

test('figures are figures, words are words and never formulas; headings are frozen and printed on every page with the notice', async () => {
  const sheet = await opened(await write());
  const rows = sheet.getRows(2, sheet.rowCount - 1) ?? [];
  const joint = rows.find((row) => row.getCell(1).value === 'activity' && row.getCell(2).value === 'joint')!;
  expect(joint.getCell(BOOK_HEADINGS.indexOf('likely') + 1).value).toBe(0.6);
  expect(rows.at(-4)?.getCell(2).type).toBe(ExcelJs.ValueType.String);
  expect(rows.some((row) => row.getCell(2).value === '=1+1')).toBe(true);
  expect(sheet.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
  expect(sheet.pageSetup.printTitlesRow).toBe('1:1');
  expect(sheet.headerFooter).toMatchObject({ oddHeader: '&LT && Co&R&P / &N', oddFooter: `&L${notice}` });
});

test('a formula counts as the value it was saved with, and a failed one is told at its row', async () => {
  const sheet = await opened(await write());
  const row = sheet.getColumn(2).values.indexOf('joint');
  const high = sheet.getCell(row, BOOK_HEADINGS.indexOf('high') + 1);
  high.value = { formula: '0.6*2', result: 1.2 };
  const answer = await read(await saved(sheet));
  expect(answer.ok && 'book' in answer && answer.book.activities.joint?.high).toBe(1.2);
  high.value = { error: '#REF!' };
  expect(await read(await saved(sheet))).toMatchObject({
    ok: false,
    faults: [{ row, column: 'high', problem: 'The cell holds an error of the spreadsheet.' }],
  });
});

test('a file that is no workbook, and one that says it unpacks to more than a book, are refused unread', async () => {
  const zip = new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0, 0]);
  expect(await readBookWorkbook(zip)).toMatchObject({ ok: false });
  const bytes = (await write()).slice();
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < bytes.length - 46; i++)
    if (view.getUint32(i, true) === 0x02014b50) view.setUint32(i + 24, 0xffffffff, true);
  expect(await readBookWorkbook(bytes)).toMatchObject({
    ok: false,
    faults: [{ remedy: expect.stringContaining('CSV') }],
  });
});
