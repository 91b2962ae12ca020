import { type Book, type BookHead, newSheet, openBook } from '../pdf/book.ts';
import { drawFacts, type Fact } from '../pdf/facts.ts';
import { put, rule, say } from '../pdf/lettering.ts';
import { heading, list, paragraph, sheetTitle } from '../pdf/prose.ts';
import { drawTable, type Table } from '../pdf/table.ts';

/** Something that stands on a sheet, one under the other. */
export type PaperPart =
  | { readonly kind: 'text'; readonly text: string; readonly heading?: string }
  | { readonly kind: 'list'; readonly heading: string; readonly items: readonly string[]; readonly none: string }
  | { readonly kind: 'facts'; readonly facts: readonly Fact[]; readonly across?: number }
  | { readonly kind: 'table'; readonly table: Table }
  /** Lines to sign on, each with what is written under it. */
  | { readonly kind: 'signatures'; readonly under: readonly string[] };

/** A sheet, and as many more as its parts take. */
export interface PaperSheet {
  readonly title: string;
  /** To the right of its title. */
  readonly beside: string;
  readonly parts: readonly PaperPart[];
}

export interface Paper {
  readonly head: BookHead;
  /** As the title block has it: "design 12". */
  readonly revision: string;
  readonly sheets: readonly PaperSheet[];
}

/** Sheets of an estimate as a PDF: equal values give equal bytes. The type's missing letters are listed at the end. */
export function estimatePaper({ head, revision, sheets }: Paper): Uint8Array {
  const book = openBook(head);
  for (const { title, beside, parts } of sheets) {
    newSheet(book, { title, of: 'whole job', revision });
    book.doc.outline.addItem(title);
    sheetTitle(book, title, beside);
    for (const part of parts) drawPart(book, part);
  }
  drawLetters(book);
  book.total.close(book.page);
  book.doc.end();
  return bytesOf(book);
}

function drawPart(book: Book, part: PaperPart): void {
  if (part.kind === 'text') drawText(book, part);
  else if (part.kind === 'list') drawList(book, part);
  else if (part.kind === 'facts') drawFacts(book, part.facts, part.across);
  else if (part.kind === 'table') drawTable(book, part.table);
  else drawSignatures(book, part.under);
}

function drawText(book: Book, part: Extract<PaperPart, { kind: 'text' }>): void {
  if (part.heading !== undefined) heading(book, part.heading);
  paragraph(book, part.text, { width: book.frame.width });
}

function drawList(book: Book, { heading: words, items, none }: Extract<PaperPart, { kind: 'list' }>): void {
  heading(book, words);
  if (items.length === 0) paragraph(book, none);
  else list(book, items, { width: book.frame.width });
}

const SIGNING = 44;

function drawSignatures(book: Book, under: readonly string[]): void {
  const { left, width, bottom } = book.frame;
  if (book.y + SIGNING > bottom) newSheet(book);
  const each = width / under.length;
  const line = book.y + SIGNING - 12;
  for (const [index, words] of under.entries()) {
    rule(book, line, { weight: 0.5, from: left + index * each, width: each - 24 });
    put(book, say(book, words), left + index * each, line + 3, { size: 6.5 });
  }
  book.y += SIGNING + 4;
}

function drawLetters(book: Book): void {
  if (book.altered.size === 0) return;
  drawTable(book, {
    title: 'Letters that this type lacks, and what is printed for them',
    part: { from: 0, width: 0.45 },
    columns: [
      { title: 'Written (Unicode code point)', share: 50 },
      { title: 'Printed', share: 50 },
    ],
    rows: [...book.altered]
      .sort(([a], [b]) => (a.codePointAt(0) ?? 0) - (b.codePointAt(0) ?? 0))
      .map(([written, printed]) => [
        `U+${(written.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`,
        printed,
      ]),
    none: '',
  });
}

function bytesOf(book: Book): Uint8Array {
  const parts: Uint8Array[] = [];
  for (;;) {
    const bytes: unknown = book.doc.read();
    if (!(bytes instanceof Uint8Array)) return Buffer.concat(parts);
    parts.push(bytes);
  }
}
