import type { Readiness } from '../../domain/closeout/readiness.ts';
import { ROW_WORDS } from '../../domain/closeout/words.ts';
import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { heading, list, paragraph, sheetTitle } from '../pdf/prose.ts';
import { drawTable } from '../pdf/table.ts';
import { NO_REVISION } from './cautions-sheet.ts';

/** What a turnover usually asks for and this edition keeps no record of: said, so that nobody takes the book for the whole. */
export const NOT_HELD = [
  "photographs, instrument certificates and the maker's operation and maintenance papers",
  'continuity, polarity and phase rotation; voltage at feed and far end; joint resistance; thermal scans under load: the record says that they were reported done, and holds no readings',
  'the energising gate, locks and signatures; punch list; deviations, change orders and questions; permits and final inspections',
  'warranty start and contacts, spares and tools handed over, training, lien waivers and stored-material reconciliation',
  'electrical figures of the finished system: loading, voltage, fault level and balance',
];

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
