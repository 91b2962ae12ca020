import type { LabourBookDocument } from '../job-document.ts';
import { writeTable } from '../lists/write-table.ts';
import { type BookProject, bookRows } from './book-rows.ts';
import { BOOK_HEADINGS } from './columns.ts';

/** A labour book as CSV: all of it, under headings that `readBookSheet` reads back. Office only: it holds the crew's rates. */
export function writeBookSheet(book: LabourBookDocument, project: BookProject): string {
  return writeTable(
    BOOK_HEADINGS,
    bookRows(book, project).map((row) => BOOK_HEADINGS.map((heading) => row[heading] ?? '')),
  );
}
