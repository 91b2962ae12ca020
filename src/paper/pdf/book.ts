import PDFDocument from 'pdfkit';
import type { UnitSystem } from '../../domain/model.ts';
import { cutLine } from './break-lines.ts';
import type { Entry } from './contents.ts';
import { printable } from './printable.ts';
import { type TotalPages, totalPages } from './total-pages.ts';

/** What every sheet of a book says in its title block. */
export interface BookHead {
  readonly title: string;
  readonly subject: string;
  readonly jobNumber: string;
  readonly jobName: string;
  /** As-of time as printed, and as a moment for the document's own dates. */
  readonly asOf: string;
  readonly asOfDate: Date;
  readonly units: UnitSystem;
  /** One line that stands on every sheet. */
  readonly caution: string;
}

export interface SheetHead {
  readonly title: string;
  /** The run the sheet speaks of, or the whole job. */
  readonly of: string;
  readonly revision: string;
}

/** A book being drawn, sheet after sheet. `y` is where the next thing goes; nothing is kept of a sheet that is done. */
export interface Book {
  readonly doc: PDFKit.PDFDocument;
  readonly head: BookHead;
  readonly frame: Frame;
  readonly total: TotalPages;
  readonly widths: Readonly<Record<Face, Map<string, number>>>;
  /** Characters that the type lacks, with what was printed for them. */
  readonly altered: Map<string, string>;
  /** Lines of the contents, as their sheets are begun. */
  readonly entries: Entry[];
  sheet: SheetHead;
  /** Number of the sheet being drawn; contents pages, drawn last, take their numbers beforehand. */
  page: number;
  y: number;
}

/** Where things go on a sheet, in points from its upper left corner. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly bottom: number;
  readonly border: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

export const PLAIN = 'Helvetica';
export const BOLD = 'Helvetica-Bold';
export type Face = typeof PLAIN | typeof BOLD;

const BLOCK_HEIGHT = 34;
const INSET = 12;
const LETTER = [792, 612] as const;
const A4 = [841.89, 595.28] as const;

/** Opens a book of landscape sheets: letter where lengths are in feet, A4 where they are metric. */
export function openBook(head: BookHead): Book {
  const [width, height] = head.units === 'ft-in' ? LETTER : A4;
  const doc = new PDFDocument({
    autoFirstPage: false,
    size: [width, height],
    margin: 0,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    info: {
      Title: head.title,
      Subject: head.subject,
      Author: 'Busway Job Book',
      Creator: 'Busway Job Book',
      Producer: 'Busway Job Book',
      CreationDate: head.asOfDate,
      ModDate: head.asOfDate,
    },
  });
  const border = { x: 34, y: 24, width: width - 58, height: height - 48 };
  const frame: Frame = {
    left: border.x + INSET,
    top: border.y + INSET,
    width: border.width - 2 * INSET,
    bottom: border.y + border.height - BLOCK_HEIGHT - 8,
    border,
  };
  const sheet = { title: '', of: '', revision: '' };
  return {
    doc,
    head,
    frame,
    total: totalPages(doc),
    widths: { [PLAIN]: new Map(), [BOLD]: new Map() },
    altered: new Map(),
    entries: [],
    sheet,
    page: 0,
    y: frame.top,
  };
}

/** Begins a sheet under a new head, or goes on with the one before on the next sheet. */
export function newSheet(book: Book, sheet: SheetHead = book.sheet): void {
  book.sheet = sheet;
  book.page += 1;
  book.doc.addPage();
  book.y = book.frame.top;
  drawBorder(book);
}

/** Goes to the next sheet where `height` has no room on this one; true when it did. */
export function makeRoom(book: Book, height: number): boolean {
  if (book.y + height <= book.frame.bottom) return false;
  newSheet(book);
  return true;
}

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
  const width = measure(book, face, size)(text);
  book.doc.font(face).fontSize(size).fillColor('black');
  // What the library would count again for itself.
  const counted = { textWidth: width, wordCount: 1 };
  book.doc.text(text, rightOf === undefined ? x : x + rightOf - width, y, { lineBreak: false, ...counted });
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

function drawBorder(book: Book): void {
  const { doc, frame, head, sheet } = book;
  const { x, y, width, height } = frame.border;
  doc.lineWidth(0.9).strokeColor('black').rect(x, y, width, height).stroke();
  const top = y + height - BLOCK_HEIGHT;
  rule(book, top, { weight: 0.9, from: x, width });
  const cells = [
    { label: 'Job', lines: [head.jobNumber, head.jobName], share: 0.3 },
    { label: 'Sheet', lines: [sheet.title, head.caution], share: 0.3 },
    { label: 'Run', lines: [sheet.of], share: 0.13 },
    { label: 'Revision', lines: [sheet.revision], share: 0.08 },
    { label: 'As of', lines: head.asOf.split(/ (?=\S+$)/), share: 0.11 },
  ];
  let left = x;
  for (const cell of cells) {
    drawCell(book, cell.label, cell.lines, left, top, cell.share * width);
    left += cell.share * width;
    doc
      .lineWidth(0.4)
      .moveTo(left, top)
      .lineTo(left, y + height)
      .stroke();
  }
  drawPageNumber(book, left, top);
}

function drawCell(book: Book, label: string, lines: readonly string[], x: number, y: number, width: number): void {
  put(book, label.toUpperCase(), x + 5, y + 4, { size: 5 });
  for (const [index, line] of lines.entries()) {
    const face = index === 0 ? BOLD : PLAIN;
    const size = index === 0 ? 8.5 : 6.2;
    const fitted = cutLine(say(book, line), width - 10, measure(book, face, size));
    put(book, fitted, x + 5, y + 11.5 + index * 10.5, { face, size });
  }
}

function drawPageNumber(book: Book, x: number, y: number): void {
  put(book, 'PAGE', x + 5, y + 4, { size: 5 });
  const number = String(book.page);
  put(book, number, x + 5, y + 11.5, { face: BOLD, size: 8.5 });
  put(book, 'of', x + 5, y + 22, { size: 6.2 });
  book.total.draw(x + 14, y + 21.4);
}
