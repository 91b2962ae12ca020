import { BOLD, type Book, type Face, makeRoom, measure, newSheet, PLAIN, put, rule, say } from './book.ts';
import { breakLines } from './break-lines.ts';
import { heading } from './prose.ts';

export interface Column {
  readonly title: string;
  /** Share of the table's width, in any unit. */
  readonly share: number;
  readonly align?: 'left' | 'right';
}

/** A row of cells, or a line across that heads the rows after it. */
export type Row = readonly string[] | { readonly group: string; readonly beside?: string };

export interface Table {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: Iterable<Row>;
  /** What stands there when there is no row. */
  readonly none: string;
  /** Part of the sheet's width that the table takes. */
  readonly width?: number;
}

const SIZE = 7.5;
const LINE = 9;
const PAD = 2.2;
const GAP = 7;
const HEADER = 13;
/** A row of more lines than this is broken over sheets; a shorter one is kept whole. */
const WHOLE_ROW = 12;

/** A ruled table over as many sheets as it takes, its head on each. Text is broken in its column and never cut. */
export function drawTable(book: Book, table: Table): void {
  heading(book, table.title, HEADER + 2 * LINE);
  const columns = placed(book, table);
  let rows = 0;
  for (const row of table.rows) {
    if (rows === 0) drawHeader(book, columns);
    rows += 1;
    if (isGroup(row)) drawGroup(book, columns, row);
    else drawRow(book, columns, row);
  }
  if (rows === 0) put(book, say(book, table.none), book.frame.left, book.y, { size: SIZE });
  book.y += rows === 0 ? 20 : 12;
}

interface PlacedColumn {
  readonly title: string;
  readonly x: number;
  readonly width: number;
  readonly right: boolean;
}

function placed(book: Book, table: Table): PlacedColumn[] {
  const sum = table.columns.reduce((total, column) => total + column.share, 0);
  const whole = book.frame.width * (table.width ?? 1);
  let x = book.frame.left;
  return table.columns.map((column) => {
    const width = (whole * column.share) / sum;
    const place = { title: column.title, x, width: width - GAP, right: column.align === 'right' };
    x += width;
    return place;
  });
}

function drawHeader(book: Book, columns: readonly PlacedColumn[]): void {
  const broken = columns.map(({ title, width }) => breakLines(say(book, title), width, measure(book, PLAIN, 6.2)));
  const deepest = Math.max(...broken.map((lines) => lines.length));
  for (const [index, column] of columns.entries()) {
    const lines = broken[index] ?? [];
    for (const [at, line] of lines.entries()) {
      const y = book.y + (deepest - lines.length + at) * 7.2;
      put(book, line, column.x, y, { size: 6.2, ...(column.right ? { rightOf: column.width } : {}) });
    }
  }
  book.y += deepest * 7.2 + 2;
  rule(book, book.y, 0.7, columns[0]?.x, extent(columns));
  book.y += 1.5;
}

function extent(columns: readonly PlacedColumn[]): number {
  const last = columns.at(-1);
  const first = columns[0];
  return last === undefined || first === undefined ? 0 : last.x + last.width - first.x;
}

function drawGroup(
  book: Book,
  columns: readonly PlacedColumn[],
  { group, beside = '' }: { group: string; beside?: string },
): void {
  if (makeRoom(book, 3 * LINE + 3 * PAD)) drawHeader(book, columns);
  const left = columns[0]?.x ?? book.frame.left;
  const title = breakLines(say(book, group), 0.45 * extent(columns), measure(book, BOLD, SIZE));
  const besides = breakLines(say(book, beside), 0.53 * extent(columns), measure(book, PLAIN, SIZE));
  for (let line = 0; line < Math.max(title.length, besides.length); line++) {
    if (line > 0 && makeRoom(book, LINE)) drawHeader(book, columns);
    put(book, title[line] ?? '', left, book.y + PAD, { face: BOLD, size: SIZE });
    put(book, besides[line] ?? '', left, book.y + PAD, { size: SIZE, rightOf: extent(columns) });
    book.y += LINE;
  }
  book.y += 2 * PAD;
  rule(book, book.y, 0.5, left, extent(columns));
}

function drawRow(book: Book, columns: readonly PlacedColumn[], row: readonly string[]): void {
  const face: Face = PLAIN;
  const cells = columns.map((column, index) =>
    breakLines(say(book, row[index] ?? ''), column.width, measure(book, face, SIZE)),
  );
  const deepest = Math.max(1, ...cells.map((lines) => lines.length));
  if (deepest <= WHOLE_ROW && makeRoom(book, deepest * LINE + 2 * PAD)) drawHeader(book, columns);
  book.y += PAD;
  for (let line = 0; line < deepest; line++) {
    if (book.y + LINE > book.frame.bottom) {
      newSheet(book);
      drawHeader(book, columns);
    }
    for (const [index, column] of columns.entries()) {
      put(book, cells[index]?.[line] ?? '', column.x, book.y, {
        face,
        size: SIZE,
        ...(column.right ? { rightOf: column.width } : {}),
      });
    }
    book.y += LINE;
  }
  book.y += PAD;
  rule(book, book.y, 0.2, columns[0]?.x, extent(columns));
}

function isGroup(row: Row): row is { readonly group: string; readonly beside?: string } {
  return !Array.isArray(row);
}
