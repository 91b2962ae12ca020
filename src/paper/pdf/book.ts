import PDFDocument from 'pdfkit';
import type { UnitSystem } from '../../domain/model.ts';
import type { Entry } from './contents.ts';
import { BOLD, type Face, PLAIN } from './lettering.ts';
import { BLOCK_HEIGHT, drawTitleBlock } from './title-block.ts';
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
  drawTitleBlock(book);
}

/** Goes to the next sheet where `height` has no room on this one; true when it did. */
export function makeRoom(book: Book, height: number): boolean {
  if (book.y + height <= book.frame.bottom) return false;
  newSheet(book);
  return true;
}
