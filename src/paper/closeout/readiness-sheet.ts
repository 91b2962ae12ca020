import { NOT_HELD } from '../../domain/closeout/not-held.ts';
import type { Readiness } from '../../domain/closeout/readiness.ts';
import { ROW_WORDS } from '../../domain/closeout/words.ts';
import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { heading, list, paragraph, sheetTitle } from '../pdf/prose.ts';
import { drawTable } from '../pdf/table.ts';
import { NO_REVISION } from './cautions-sheet.ts';

/** What the closeout asks against what is there, on one sheet. */
export function readinessSheet(book: Book, readiness: Readiness): void {
  startPart(book, { title: 'Readiness', of: 'whole job', revision: NO_REVISION }, { title: 'Readiness', rank: 'part' });
  const { required, present, percent, runs } = readiness;
  sheetTitle(
    book,
    'Readiness',
    percent === null ? 'nothing asked yet' : `${present} of ${required} asked, ${percent} %`,
  );
  paragraph(
    book,
    `Evidence present against evidence asked for, over ${runs} ${runs === 1 ? 'run' : 'runs'}; percent are rounded down. Every gap is named under Open items.`,
    { width: book.frame.width },
  );
  drawTable(book, {
    title: 'Asked and present',
    columns: [
      { title: 'Asked for', share: 22 },
      { title: 'What counts', share: 48 },
      { title: 'Asked', share: 9, align: 'right' },
      { title: 'Present', share: 9, align: 'right' },
      { title: 'Missing', share: 9, align: 'right' },
      { title: '%', share: 7, align: 'right' },
    ],
    rows: readiness.rows.map((row) => [
      ROW_WORDS[row.row].title,
      ROW_WORDS[row.row].asks,
      String(row.required),
      String(row.present),
      String(row.required - row.present),
      row.percent === null ? 'none asked' : String(row.percent),
    ]),
    none: 'Nothing is asked.',
  });
  heading(book, 'Not in this book', 60);
  paragraph(
    book,
    'Usual parts of a turnover that this edition of the program keeps no record of. Add them by hand, or agree that they are not owed:',
  );
  list(book, NOT_HELD);
}
