import { openItems } from '../../domain/closeout/open-items.ts';
import type { Readiness } from '../../domain/closeout/readiness.ts';
import { gapWords, ROW_WORDS } from '../../domain/closeout/words.ts';
import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { paragraph, sheetTitle } from '../pdf/prose.ts';
import { drawTable } from '../pdf/table.ts';
import { NO_REVISION } from './cautions-sheet.ts';

/** The honest list: everything that is asked for and not there, by run, with nothing left out. */
export function openItemsSheet(book: Book, readiness: Readiness): void {
  startPart(
    book,
    { title: 'Open items', of: 'whole job', revision: NO_REVISION },
    { title: 'Open items', rank: 'part' },
  );
  const missing = readiness.required - readiness.present;
  sheetTitle(book, 'Open items', missing === 0 ? 'none' : `${missing} missing`);
  paragraph(
    book,
    'Everything that the closeout asks for and the record does not hold, as of the time in the title block. What this edition does not record at all is listed under Readiness.',
    { width: book.frame.width },
  );
  drawTable(book, {
    title: 'By run',
    columns: [
      { title: 'Run', share: 16 },
      { title: 'Asked for', share: 18 },
      { title: 'What is missing', share: 26 },
      { title: 'How many', share: 8, align: 'right' },
      { title: 'Which', share: 52 },
    ],
    rows: openItems(readiness.gaps).map((item) => [
      item.run ?? 'whole job',
      ROW_WORDS[item.row].title,
      gapWords(item.reason),
      String(item.count),
      item.marks.length === 1 && item.marks[0] === item.run ? '' : item.marks.join(', '),
    ]),
    none: 'Nothing that this edition asks for is open.',
  });
}
