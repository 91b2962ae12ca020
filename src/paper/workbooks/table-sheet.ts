import type { Style, Workbook, Worksheet } from 'exceljs';

/** A cell: text, a figure, a formula with the value it has, or nothing. */
export type Cell = string | number | null | { readonly formula: string; readonly result: number };

export interface TableColumn {
  readonly head: string;
  /** In letters. */
  readonly width: number;
  /** Number format, as `#,##0.00`. */
  readonly format?: string;
  /** Long words break within the column, so that the sheet prints at a size that can be read. */
  readonly wraps?: true;
}

export interface TableSheet {
  readonly name: string;
  /** Above the heads: what this is, of which job, and as of when. */
  readonly title: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly Cell[])[];
  /** A last row, in bold. */
  readonly foot?: readonly Cell[];
}

/** The row that the first record stands in: title, a blank row, heads. */
export const FIRST_ROW = 4;
const HEAD_ROW = FIRST_ROW - 1;
const LINE_POINTS = 15;

/** Adds a table that prints as it reads: heads frozen and repeated on every page, one page wide, its area set. */
export function addTable(workbook: Workbook, table: TableSheet): Worksheet {
  const { columns, rows, foot } = table;
  const sheet = workbook.addWorksheet(table.name, {
    views: [{ state: 'frozen', ySplit: HEAD_ROW }],
    pageSetup: { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
  });
  addTitle(sheet, table);
  columns.forEach((column, index) => {
    const head = sheet.getCell(HEAD_ROW, index + 1);
    head.value = column.head;
    head.font = { bold: true };
    head.border = { bottom: { style: 'thin' } };
    sheet.getColumn(index + 1).width = column.width;
  });
  const all = foot === undefined ? rows : [...rows, foot];
  const styles = { row: stylesOf(columns, false), foot: stylesOf(columns, true) };
  all.forEach((values, place) => {
    const row = sheet.getRow(FIRST_ROW + place);
    const lines = linesOf(values, columns);
    if (lines > 1) row.height = LINE_POINTS * lines;
    const own = foot !== undefined && place === rows.length ? styles.foot : styles.row;
    values.forEach((value, index) => {
      const cell = row.getCell(index + 1);
      cell.value = value;
      const style = own[index]?.[value === null || typeof value === 'string' ? 'words' : 'figure'];
      if (style !== undefined) cell.style = style;
    });
  });
  sheet.pageSetup.printArea = `A1:${letter(columns.length)}${Math.max(HEAD_ROW, FIRST_ROW + all.length - 1)}`;
  sheet.pageSetup.printTitlesRow = `${HEAD_ROW}:${HEAD_ROW}`;
  return sheet;
}

type CellStyle = Partial<Style>;

/**
 * How the words and the figures of each column look. All cells of a column have the same object, by which the library knows
 * a style again: it would else compare each of a hundred thousand cells. Frozen, because a change of one would change all.
 */
function stylesOf(
  columns: readonly TableColumn[],
  bold: boolean,
): readonly { readonly words: CellStyle; readonly figure: CellStyle }[] {
  return columns.map(({ format, wraps }) => {
    const words: CellStyle = {
      ...(wraps ? { alignment: { wrapText: true, vertical: 'top' } } : {}),
      ...(bold ? { font: { bold: true } } : {}),
    };
    const figure = format === undefined ? words : { ...words, numFmt: format };
    return { words: Object.freeze(words), figure: Object.freeze(figure) };
  });
}

/** Lines that the longest words of a row take: programs that open a file do not all make room by themselves. */
function linesOf(row: readonly Cell[], columns: readonly TableColumn[]): number {
  return row.reduce<number>((most, cell, index) => {
    const column = columns[index];
    return column?.wraps && typeof cell === 'string' ? Math.max(most, Math.ceil(cell.length / column.width)) : most;
  }, 1);
}

/** The title over all columns, broken into as many lines as it takes: past them it would make the whole print smaller. */
function addTitle(sheet: Worksheet, { title, columns }: TableSheet): void {
  const cell = sheet.getCell(1, 1);
  cell.value = title;
  cell.font = { bold: true };
  cell.alignment = { wrapText: true, vertical: 'top' };
  sheet.mergeCells(1, 1, 1, columns.length);
  // Bold letters are wider than the digit that a column's width counts.
  const letters = columns.reduce((sum, { width }) => sum + width, 0) / 1.25;
  sheet.getRow(1).height = LINE_POINTS * Math.ceil(title.length / letters);
}

/** A column by its number, from 1. `letter(27) = 'AA'`. */
export function letter(column: number): string {
  const rest = (column - 1) % 26;
  const before = Math.floor((column - 1) / 26);
  return (before === 0 ? '' : letter(before)) + String.fromCharCode(65 + rest);
}

/** Adds up a column of the table, over `count` records. */
export function sumOf(column: number, count: number): string {
  return `SUM(${letter(column)}${FIRST_ROW}:${letter(column)}${FIRST_ROW + count - 1})`;
}
