import { type Book, newSheet, type SheetHead } from './book.ts';
import { cutLine } from './break-lines.ts';
import { BOLD, measure, PLAIN, put, rule, say } from './lettering.ts';
import { sheetTitle } from './prose.ts';

/** A line of the contents. */
export interface Entry {
  readonly title: string;
  /** Where it leads, a named place of the document. */
  readonly place: string;
  readonly page: number;
  readonly rank: Rank;
}

/** How a part is listed: in bold, set in under the one before, or as a bookmark alone. */
export type Rank = 'part' | 'run' | 'bookmark';

export interface Part {
  readonly title: string;
  readonly rank: Rank;
  /** Bookmark that this one is filed under; none at the outermost. */
  readonly under?: PDFKit.PDFOutline;
}

/** Begins a sheet that the contents and the bookmarks lead to; its bookmark comes back, for what is filed under it. */
export function startPart(
  book: Book,
  sheet: SheetHead,
  { title, rank, under = book.doc.outline }: Part,
): PDFKit.PDFOutline {
  newSheet(book, sheet);
  return mark(book, title, rank, under);
}

/** The same for the first sheet of a group, whose name stands in the contents and among the bookmarks above it. */
export function startGroup(book: Book, sheet: SheetHead, group: string): PDFKit.PDFOutline {
  newSheet(book, sheet);
  return mark(book, group, 'part', book.doc.outline);
}

/** Lists the sheet being drawn once more, under its own name. */
export function mark(book: Book, title: string, rank: Rank, under: PDFKit.PDFOutline): PDFKit.PDFOutline {
  const place = `page-${String(book.page).padStart(7, '0')}`;
  book.doc.addNamedDestination(place, 'XYZ', 0, 0, null);
  if (rank !== 'bookmark') book.entries.push({ title, place, page: book.page, rank });
  return under.addItem(title);
}

const LINE = 11.6;
const HEAD = 26;
const COLUMNS = 3;

/** How many sheets the contents take: known before any page is, so that page numbers can be given out. */
export function contentsPages(book: Book, entries: number): number {
  return Math.max(1, Math.ceil(entries / (COLUMNS * linesOf(book))));
}

function linesOf(book: Book): number {
  return Math.floor((book.frame.bottom - book.frame.top - HEAD) / LINE);
}

/** Draws the contents once every page is known, on the `sheets` kept for them behind the first `after` pages of the book. */
export function drawContents(book: Book, after: number, sheets: number): void {
  const { entries } = book;
  const perSheet = COLUMNS * linesOf(book);
  if (contentsPages(book, entries.length) !== sheets)
    throw new Error(`${entries.length} lines of contents do not take the ${sheets} sheets kept for them`);
  const last = book.page;
  book.page = after;
  for (let sheet = 0; sheet < sheets; sheet++) {
    newSheet(book, { title: 'Contents', of: 'whole job', revision: '–' });
    if (sheet === 0) markContents(book, after);
    sheetTitle(book, 'Contents', sheets > 1 ? `sheet ${sheet + 1} of ${sheets}` : '');
    for (const [index, entry] of entries.slice(sheet * perSheet, (sheet + 1) * perSheet).entries())
      drawEntry(book, entry, index);
  }
  book.page = last;
  const kids = book.doc._root.data.Pages.data.Kids;
  kids.splice(after, 0, ...kids.splice(kids.length - sheets));
}

/** The contents' own bookmark, in its turn among the others. */
function markContents(book: Book, after: number): void {
  const { outline } = book.doc;
  outline.addItem('Contents');
  outline.children.splice(after, 0, ...outline.children.splice(outline.children.length - 1));
}

function drawEntry(book: Book, entry: Entry, index: number): void {
  const { frame, doc } = book;
  const gutter = 22;
  const width = (frame.width - gutter * (COLUMNS - 1)) / COLUMNS;
  const lines = linesOf(book);
  const x = frame.left + Math.floor(index / lines) * (width + gutter);
  const y = book.y + (index % lines) * LINE;
  const indent = entry.rank === 'part' ? 0 : 10;
  const face = entry.rank === 'part' ? BOLD : PLAIN;
  const size = 7.8;
  const title = cutLine(say(book, entry.title), width - indent - 34, measure(book, face, size));
  put(book, title, x + indent, y, { face, size });
  put(book, String(entry.page), x, y, { face, size, rightOf: width });
  rule(book, y + LINE - 2.2, { ink: '#8c8c8c', from: x + indent, width: width - indent });
  doc.goTo(x, y, width, LINE, entry.place);
}
