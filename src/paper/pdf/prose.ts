import { BOLD, type Book, type Face, makeRoom, measure, PLAIN, put, rule, say } from './book.ts';
import { breakLines } from './break-lines.ts';

/** The name of a sheet at its head. */
export function sheetTitle(book: Book, title: string, beside = ''): void {
  put(book, say(book, title), book.frame.left, book.y, { face: BOLD, size: 14 });
  put(book, say(book, beside), book.frame.left, book.y + 4, { size: 8.5, rightOf: book.frame.width });
  rule(book, book.y + 18, 0.9);
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

/** Numbered or marked lines, each hanging on its mark. */
export function list(book: Book, items: readonly string[], mark: (index: number) => string = () => '–'): void {
  for (const [index, item] of items.entries()) {
    makeRoom(book, 12);
    put(book, say(book, mark(index)), book.frame.left, book.y, { size: 8.5 });
    paragraph(book, item, { indent: 16 });
    book.y -= 1.5;
  }
  book.y += 6;
}
