import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { paragraph, sheetTitle } from '../pdf/prose.ts';
import { drawTable } from '../pdf/table.ts';
import { NO_REVISION } from './cautions-sheet.ts';

/** The last sheet: which characters this book prints otherwise than they were written. */
export function lettersSheet(book: Book): void {
  startPart(
    book,
    { title: 'Letters', of: 'whole job', revision: NO_REVISION },
    { title: 'Letters printed otherwise', rank: 'part' },
  );
  sheetTitle(book, 'Letters printed otherwise', `${book.altered.size}`);
  paragraph(book, 'The registers and the job document in this package hold every name as it was written, in UTF-8.', {
    width: book.frame.width,
  });
  const altered = [...book.altered].sort(([a], [b]) => (a.codePointAt(0) ?? 0) - (b.codePointAt(0) ?? 0));
  drawTable(book, {
    title: 'Code points',
    part: { from: 0, width: 0.45 },
    columns: [
      { title: 'Written as (Unicode code point)', share: 50 },
      { title: 'Printed as', share: 50 },
    ],
    rows: altered.map(([character, shown]) => [codePoint(character), shown]),
    none: 'Every letter of this book is printed as it was written.',
  });
}

function codePoint(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}
