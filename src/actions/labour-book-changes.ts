import type { LabourBookDocument } from '../document/job-document.ts';
import { type BookChange, bookChanges } from '../document/labour-book-sheet/book-changes.ts';
import { type BookRow, bookRows } from '../document/labour-book-sheet/book-rows.ts';
import { readBookSheet } from '../document/labour-book-sheet/read-book-sheet.ts';
import { isWorkbook, readBookWorkbook } from '../document/labour-book-sheet/read-book-workbook.ts';
import type { ListFault } from '../document/lists/list-fault.ts';
import { type Beside, beside } from '../document/what-if/beside.ts';
import type { Context, Viewer } from './context.ts';
import { crewPlanOf } from './crew-plan-of.ts';
import { figuresOf } from './figures.ts';
import { designOf } from './job-design.ts';
import { setBook } from './labour-books.ts';
import { asFault } from './lists.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

/** What another book would change in a job: every value, and what the job comes to before and after. Money: office only. */
export interface BookUpgrade extends Beside {
  readonly changes: readonly BookChange[];
}

/** The change that a book would make to the job; nothing is written. */
export async function previewBook(
  context: Context,
  viewer: Viewer,
  projectId: string,
  book: LabourBookDocument,
): Promise<BookUpgrade> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const { document, job, figures } = await figuresOf(db, projectId);
  const plan = await crewPlanOf(context, viewer, projectId);
  return {
    changes: bookChanges(document.labourBook ?? null, book, document.project),
    ...beside({ job, figures }, { ...document, labourBook: book }, plan),
  };
}

/** The text of a labour book's sheet, whichever way it was sent; faults where it is a workbook that cannot be opened. */
export async function sheetText(
  bytes: Uint8Array | null,
  pasted: string,
): Promise<{ readonly text: string; readonly faults: readonly ListFault[] }> {
  if (bytes === null) return { text: pasted, faults: [] };
  if (!isWorkbook(bytes)) return { text: new TextDecoder().decode(bytes), faults: [] };
  const read = await readBookWorkbook(bytes);
  return read.ok ? { text: read.text, faults: [] } : { text: '', faults: read.faults };
}

export type SheetPreview =
  | { readonly ok: true; readonly upgrade: BookUpgrade; readonly questions: readonly ListFault[] }
  | { readonly ok: false; readonly faults: readonly ListFault[] };

/** What the sheet of a labour book would change, or every cell of it that must be put right. */
export async function previewSheet(
  context: Context,
  viewer: Viewer,
  projectId: string,
  text: string,
): Promise<SheetPreview> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const read = readBookSheet(text, (await designOf(db, projectId)).document);
  if (!read.ok) return read;
  return { ok: true, upgrade: await previewBook(context, viewer, projectId, read.book), questions: read.questions };
}

/** Puts the book of a sheet in the place of the job's, whole or not at all. */
export async function takeSheet(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  text: string,
): Promise<LabourBookDocument> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const read = readBookSheet(text, (await designOf(db, projectId)).document);
  if (!read.ok) return refuse({ code: 'invalid', faults: read.faults.map(asFault) });
  await setBook(context, viewer, projectId, { version, book: read.book, action: 'labour book taken from a sheet' });
  return read.book;
}

/** The job's book as the rows of its sheet. */
export async function exportBook(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<{ readonly book: LabourBookDocument; readonly rows: readonly BookRow[]; readonly number: string }> {
  const { db } = context.database;
  const { number } = await reach(db, viewer, projectId, 'money');
  const { document } = await designOf(db, projectId);
  const book = document.labourBook ?? refuse({ code: 'not-found', what: 'labour book' });
  return { book, rows: bookRows(book, document.project), number };
}
