import { type Book, newSheet } from './book.ts';
import { breakLines } from './break-lines.ts';
import { BOLD, measure, PLAIN, put, rule, say } from './lettering.ts';
import {
  columnsNow,
  drawHead,
  extent,
  type Flow,
  headHeight,
  LINE,
  makeRoomIn,
  openFlow,
  PAD,
  type PlacedColumn,
  SIZE,
  SOFT,
} from './table-flow.ts';

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
  readonly rows: readonly Row[];
  /** What stands there when there is no row. */
  readonly none: string;
  /** Part of the sheet that the table takes, from the left edge: the whole width when absent. */
  readonly part?: { readonly from: number; readonly width: number };
  /** Newspaper columns that the rows run through, one after another: 1 when absent. */
  readonly across?: 1 | 2;
}

const TITLE = 14;
const AFTER = 12;
/** A row of more lines than this is broken over sheets; a shorter one is kept whole. */
const WHOLE_ROW = 12;

/** A ruled table over as many sheets as it takes, its head on each. Text is broken in its column and never cut. */
export function drawTable(book: Book, table: Table): void {
  const flow = openFlow(book, table);
  if (book.y + TITLE + headHeight(book, flow) + 2 * LINE > book.frame.bottom) newSheet(book);
  put(book, say(book, table.title), flow.left, book.y, { face: BOLD, size: 9.5 });
  book.y += TITLE;
  flow.top = book.y;
  if (table.rows.length === 0) {
    put(book, say(book, table.none), flow.left, book.y, { size: SIZE });
    book.y += LINE + AFTER;
    return;
  }
  drawHead(book, flow);
  for (const row of table.rows) {
    if (isGroup(row)) drawGroup(book, flow, row);
    else drawRow(book, flow, row);
  }
  book.y = (flow.at === 0 ? book.y : flow.deepest) + AFTER;
}

/** Two tables next to each other where both fit on a sheet, one under the other where they do not. */
export function drawBeside(book: Book, left: Table, right: Table, share: number): void {
  const tables = [
    { ...left, part: { from: 0, width: share - 0.015 } },
    { ...right, part: { from: share + 0.015, width: 1 - share - 0.015 } },
  ];
  const height = Math.max(...tables.map((table) => heightOf(book, table)));
  if (height > book.frame.bottom - book.frame.top) {
    drawTable(book, left);
    drawTable(book, right);
    return;
  }
  if (book.y + height > book.frame.bottom) newSheet(book);
  const top = book.y;
  const ends = tables.map((table) => {
    book.y = top;
    drawTable(book, table);
    return book.y;
  });
  book.y = Math.max(...ends);
}

function drawGroup(book: Book, flow: Flow, { group, beside = '' }: Exclude<Row, readonly string[]>): void {
  flow.group = null;
  makeRoomIn(book, flow, 3 * LINE + 3 * PAD);
  flow.group = group;
  const { width } = extent(columnsNow(flow));
  const titles = breakLines(say(book, group), 0.45 * width, measure(book, BOLD, SIZE));
  const besides = breakLines(say(book, beside), 0.53 * width, measure(book, PLAIN, SIZE));
  book.y += PAD;
  for (let line = 0; line < Math.max(titles.length, besides.length); line++) {
    makeRoomIn(book, flow, LINE + PAD);
    const { from } = extent(columnsNow(flow));
    put(book, titles[line] ?? '', from, book.y, { face: BOLD, size: SIZE });
    put(book, besides[line] ?? '', from, book.y, { size: SIZE, rightOf: width });
    book.y += LINE;
  }
  book.y += PAD;
  rule(book, book.y, { weight: 0.5, ...extent(columnsNow(flow)) });
}

function cellsOf(book: Book, columns: readonly PlacedColumn[], row: readonly string[]): string[][] {
  return columns.map((column, index) =>
    breakLines(say(book, row[index] ?? ''), column.width, measure(book, PLAIN, SIZE)),
  );
}

function drawRow(book: Book, flow: Flow, row: readonly string[]): void {
  const cells = cellsOf(book, columnsNow(flow), row);
  const deepest = Math.max(1, ...cells.map((lines) => lines.length));
  makeRoomIn(book, flow, (deepest <= WHOLE_ROW ? deepest : 1) * LINE + 2 * PAD);
  book.y += PAD;
  for (let line = 0; line < deepest; line++) {
    makeRoomIn(book, flow, LINE);
    for (const [index, column] of columnsNow(flow).entries()) {
      put(book, cells[index]?.[line] ?? '', column.x, book.y, {
        size: SIZE,
        ...(column.right ? { rightOf: column.width } : {}),
      });
    }
    book.y += LINE;
  }
  book.y += PAD;
  rule(book, book.y, { ink: SOFT, ...extent(columnsNow(flow)) });
}

/** As drawn on one sheet, in one newspaper column. */
function heightOf(book: Book, table: Table): number {
  const flow = openFlow(book, table);
  if (table.rows.length === 0) return TITLE + LINE + AFTER;
  const heights = table.rows.map((row) =>
    isGroup(row)
      ? LINE + 2 * PAD
      : Math.max(1, ...cellsOf(book, columnsNow(flow), row).map((lines) => lines.length)) * LINE + 2 * PAD,
  );
  return TITLE + headHeight(book, flow) + heights.reduce((sum, height) => sum + height, 0) + AFTER;
}

function isGroup(row: Row): row is Exclude<Row, readonly string[]> {
  return !Array.isArray(row);
}
