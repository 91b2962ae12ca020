import type { Book } from './book.ts';
import { printable } from './printable.ts';
import { setLine } from './set-line.ts';

export const PLAIN = 'Helvetica';
export const BOLD = 'Helvetica-Bold';
export type Face = typeof PLAIN | typeof BOLD;

/**
 * Measures lines in points: the sum of their letters' widths, each asked of the type once. Setting a line draws pairs of
 * letters together and never apart by more than a hair, so no line is wider than this says.
 */
export function measure(book: Book, face: Face, size: number): (text: string) => number {
  const widths = book.widths[face];
  return (text) => {
    let width = 0;
    for (const letter of text) width += widths.get(letter) ?? ask(book, face, letter);
    return width * size;
  };
}

function ask(book: Book, face: Face, letter: string): number {
  const width = book.doc.font(face).fontSize(1).widthOfString(letter);
  book.widths[face].set(letter, width);
  return width;
}

/** Text as this book's type prints it, noting what it had to change. */
export function say(book: Book, text: string): string {
  return printable(text, (character, shown) => book.altered.set(character, shown));
}

export interface Lettering {
  readonly face?: Face;
  readonly size?: number;
  /** Set against the right edge of this width. */
  readonly rightOf?: number;
}

/** One line of text, already broken and printable, with its upper edge at `y`. */
export function put(
  book: Book,
  text: string,
  x: number,
  y: number,
  { face = PLAIN, size = 7.5, rightOf }: Lettering = {},
): void {
  if (text === '') return;
  const from = rightOf === undefined ? x : x + rightOf - measure(book, face, size)(text);
  setLine(book.doc.font(face).fontSize(size).fillColor('black'), text, from, y);
}

export interface Ruled {
  readonly weight?: number;
  readonly ink?: string;
  readonly from?: number;
  readonly width?: number;
}

/** A thin line across the sheet, or across part of it. */
export function rule(book: Book, y: number, ruled: Ruled = {}): void {
  const { weight = 0.25, ink = 'black', from = book.frame.left, width = book.frame.width } = ruled;
  book.doc
    .lineWidth(weight)
    .strokeColor(ink)
    .moveTo(from, y)
    .lineTo(from + width, y)
    .stroke();
}
