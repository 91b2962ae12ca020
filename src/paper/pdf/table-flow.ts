import { type Book, newSheet } from './book.ts';
import { breakLines, cutLine } from './break-lines.ts';
import { measure, PLAIN, put, rule, say } from './lettering.ts';
import type { Column, Table } from './table.ts';

export const SIZE = 7.5;
export const LINE = 9;
export const PAD = 2.2;
/** Between rows: seen, and lighter than what is written. */
export const SOFT = '#8c8c8c';
const GAP = 10;
const GUTTER = 22;
const HEAD_SIZE = 6.2;
const HEAD_LINE = 7.2;

export interface PlacedColumn {
  readonly title: string;
  readonly x: number;
  readonly width: number;
  readonly right: boolean;
}

/** Where the rows run: `columns` of each newspaper column, and which one is being filled. */
export interface Flow {
  readonly left: number;
  readonly columns: readonly (readonly PlacedColumn[])[];
  at: number;
  /** Where the columns begin on this sheet, and how far down the fullest goes. */
  top: number;
  deepest: number;
  /** Heading of the rows being drawn, said again where they go on in another place. */
  group: string | null;
}

export function openFlow(book: Book, table: Table): Flow {
  const { frame } = book;
  const { from, width } = table.part ?? { from: 0, width: 1 };
  const across = table.across ?? 1;
  const left = frame.left + from * frame.width;
  const each = (width * frame.width - (across - 1) * GUTTER) / across;
  const columns = Array.from({ length: across }, (_, index) =>
    placed(table.columns, left + index * (each + GUTTER), each),
  );
  return { left, columns, at: 0, top: book.y, deepest: book.y, group: null };
}

function placed(columns: readonly Column[], left: number, whole: number): PlacedColumn[] {
  const sum = columns.reduce((total, column) => total + column.share, 0);
  const room = whole + GAP;
  let x = left;
  return columns.map((column) => {
    const width = (room * column.share) / sum;
    const place = { title: column.title, x, width: width - GAP, right: column.align === 'right' };
    x += width;
    return place;
  });
}

export function columnsNow(flow: Flow): readonly PlacedColumn[] {
  return flow.columns[flow.at] ?? [];
}

/** Goes to the next newspaper column, or to the next sheet, where `height` has no room; the head stands there again. */
export function makeRoomIn(book: Book, flow: Flow, height: number): void {
  if (book.y + height <= book.frame.bottom) return;
  flow.deepest = Math.max(flow.deepest, book.y);
  if (flow.at + 1 < flow.columns.length) {
    flow.at += 1;
    book.y = flow.top;
  } else {
    newSheet(book);
    flow.at = 0;
    flow.top = book.y;
    flow.deepest = book.y;
  }
  drawHead(book, flow);
  if (flow.group !== null) drawContinued(book, flow, flow.group);
}

function drawContinued(book: Book, flow: Flow, group: string): void {
  const { from, width } = extent(columnsNow(flow));
  const words = cutLine(say(book, `${group}, continued`), width, measure(book, PLAIN, HEAD_SIZE));
  put(book, words, from, book.y + PAD, { size: HEAD_SIZE });
  book.y += LINE + PAD;
  rule(book, book.y, { ink: SOFT, from, width });
}

function headLines(book: Book, flow: Flow): string[][] {
  return columnsNow(flow).map(({ title, width }) =>
    breakLines(say(book, title), width, measure(book, PLAIN, HEAD_SIZE)),
  );
}

export function headHeight(book: Book, flow: Flow): number {
  return Math.max(...headLines(book, flow).map((lines) => lines.length)) * HEAD_LINE + 3.5;
}

export function drawHead(book: Book, flow: Flow): void {
  const columns = columnsNow(flow);
  const broken = headLines(book, flow);
  const deepest = Math.max(...broken.map((lines) => lines.length));
  for (const [index, column] of columns.entries()) {
    const lines = broken[index] ?? [];
    for (const [at, line] of lines.entries()) {
      const y = book.y + (deepest - lines.length + at) * HEAD_LINE;
      put(book, line, column.x, y, { size: HEAD_SIZE, ...(column.right ? { rightOf: column.width } : {}) });
    }
  }
  book.y += deepest * HEAD_LINE + 2;
  rule(book, book.y, { weight: 0.7, ...extent(columns) });
  book.y += 1.5;
}

export function extent(columns: readonly PlacedColumn[]): { from: number; width: number } {
  const first = columns[0];
  const last = columns.at(-1);
  if (first === undefined || last === undefined) throw new Error('a table without columns');
  return { from: first.x, width: last.x + last.width - first.x };
}
