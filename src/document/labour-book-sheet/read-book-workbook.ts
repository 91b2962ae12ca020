import ExcelJs, { type CellValue } from 'exceljs';
import type { ListFault } from '../lists/list-fault.ts';
import { writeRows } from '../lists/write-table.ts';
import { declaredBytes } from './declared-bytes.ts';

export type ReadWorkbook =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly faults: readonly ListFault[] };

/** A book has a few hundred rows; what unpacks to more than this is none. */
const MOST_BYTES = 20 * 1024 * 1024;
const MOST_ROWS = 5_000;
const MOST_COLUMNS = 40;

/** True for a file that is a workbook (XLSX, which is a zip archive), by its first bytes and not by its name. */
export function isWorkbook(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/** The first sheet of a workbook as the text that `readBookSheet` reads: formulas as the values they had when it was saved. */
export async function readBookWorkbook(bytes: Uint8Array): Promise<ReadWorkbook> {
  const size = declaredBytes(bytes);
  if (size === null || size > MOST_BYTES) return refuse('The file is no workbook that can be opened.');
  const workbook = new ExcelJs.Workbook();
  try {
    await workbook.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer);
  } catch {
    return refuse('The file is no workbook that can be opened.');
  }
  const [sheet] = workbook.worksheets;
  if (sheet === undefined) return refuse('The workbook has no sheet.');
  if (sheet.rowCount > MOST_ROWS || sheet.columnCount > MOST_COLUMNS)
    return refuse(`The first sheet has ${sheet.rowCount} rows and ${sheet.columnCount} columns.`);
  const rows = Array.from({ length: sheet.rowCount }, (_, row) =>
    Array.from({ length: sheet.columnCount }, (_, column) => cellText(sheet.getCell(row + 1, column + 1))),
  );
  return { ok: true, text: writeRows(rows) };
}

function refuse(problem: string): ReadWorkbook {
  const remedy = 'Send the labour book’s own sheet, the first of an XLSX workbook, or save it as CSV.';
  return { ok: false, faults: [{ row: null, column: null, value: '', problem, remedy }] };
}

/** A cell that is shown as 15 % holds 0.15: what stands there for people is read. A merged cell speaks once. */
function cellText(cell: ExcelJs.Cell): string {
  if (cell.isMerged && cell.master.address !== cell.address) return '';
  const text = textOf(cell.value);
  const isShare = /%/.test(cell.numFmt ?? '') && text !== '' && Number.isFinite(Number(text));
  return isShare ? `${Number((Number(text) * 100).toPrecision(12))} %` : text;
}

function textOf(value: CellValue | undefined): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'object') return String(value);
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if ('richText' in value) return value.richText.map(({ text }) => text).join('');
  if ('error' in value) return value.error;
  if ('text' in value) return textOf(value.text);
  return 'result' in value ? textOf(value.result) : '';
}
