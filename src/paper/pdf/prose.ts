import { type Book, makeRoom } from './book.ts';
import { breakLines } from './break-lines.ts';
import { BOLD, type Face, measure, PLAIN, put, rule, say } from './lettering.ts';

/** The name of a sheet at its head. */
export function sheetTitle(book: Book, title: string, beside = ''): void {
  put(book, say(book, title), book.frame.left, book.y, { face: BOLD, size: 14 });
  put(book, say(book, beside), book.frame.left, book.y + 4, { size: 8.5, rightOf: book.frame.width });
  rule(book, book.y + 18, { weight: 0.9 });
  book.y += 26;
}

/** A heading, kept with at least `keep` points of what follows it. */
export function heading(book: Book, text: string, keep = 30): void {
  makeRoom(book, 16 + keep);
  put(book, say(book, text), book.frame.left, book.y, { face: BOLD, size: 9.5 });
  book.y += 14;
}

export interface Set {
  readonly face?: Face;
  readonly size?: number;
  readonly indent?: number;
  readonly width?: number;
}

/** Running text over as many sheets as it takes. */
export function paragraph(
  book: Book,
  text: string,
  { face = PLAIN, size = 8.5, indent = 0, width = 560 }: Set = {},
): void {
  const room = Math.min(width, book.frame.width) - indent;
  for (const line of breakLines(say(book, text), room, measure(book, face, size))) {
    makeRoom(book, size * 1.35);
    put(book, line, book.frame.left + indent, book.y, { face, size });
    book.y += size * 1.35;
  }
  book.y += size * 0.5;
}

export interface Listed extends Pick<Set, 'size' | 'width'> {
  readonly mark?: (index: number) => string;
  /** Without the room that sets one item off from the next. */
  readonly tight?: boolean;
}

/** Numbered or marked lines, each hanging on its mark. */
export function list(
  book: Book,
  items: readonly string[],
  { mark = () => '–', size = 8.5, width = 560, tight = false }: Listed = {},
): void {
  for (const [index, item] of items.entries()) {
    makeRoom(book, size * 1.35);
    put(book, say(book, mark(index)), book.frame.left, book.y, { size });
    paragraph(book, item, { size, width, indent: 2 * size });
    book.y -= size * (tight ? 0.45 : 0.2);
  }
  book.y += 6;
}
