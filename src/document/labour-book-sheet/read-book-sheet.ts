import type { JobDocument, LabourBookDocument } from '../job-document.ts';
import type { ListFault } from '../lists/list-fault.ts';
import { readTable } from '../lists/read-table.ts';
import { inRowOrder, type ListLog, rowTaker } from '../lists/row-taker.ts';
import { BOOK_COLUMNS, type BookColumn } from './columns.ts';
import { judgeBook } from './judge-book.ts';
import { readBookRow } from './read-book-row.ts';
import type { Reading } from './reading.ts';

export type ReadBook =
  | { readonly ok: true; readonly book: LabourBookDocument; readonly questions: readonly ListFault[] }
  | { readonly ok: false; readonly faults: readonly ListFault[] };

/**
 * The sheet of a labour book, pasted or read from a file, to the whole book; or everything that is wrong with it, by row and
 * column. What the sheet does not name is not in the book: it takes the place of the one before, and nothing of it is mixed in.
 */
export function readBookSheet(text: string, job: JobDocument): ReadBook {
  const table = readTable<BookColumn>(text, BOOK_COLUMNS);
  if ('faults' in table) return { ok: false, faults: table.faults };
  const log: ListLog = { faults: [], questions: [] };
  const reading: Reading = { table, project: job.project, draft: { activities: {} }, places: [], seen: new Map() };
  for (const row of table.rows) readBookRow(rowTaker(table, row, log), reading);
  if (log.faults.length > 0) return { ok: false, faults: inRowOrder(log.faults) };
  const faults = judgeBook(job, reading.draft, reading.places);
  if (faults.length > 0) return { ok: false, faults: inRowOrder(faults) };
  return { ok: true, book: reading.draft as unknown as LabourBookDocument, questions: log.questions };
}
