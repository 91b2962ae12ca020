import { parse } from 'csv-parse/sync';
import type { LengthUnit } from '../../domain/units/read-length.ts';
import type { Entered } from '../form/entries.ts';
import { headingUnit, plainHeading } from '../lists/columns.ts';
import type { ListFault } from '../lists/list-fault.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { sayList, sayNumber, sayValue } from '../parsing/say.ts';
import { type RowGroup, rowName } from './entries.ts';
import { ROW_COLUMNS, type RowChoice, type RowColumn } from './row-columns.ts';

/** The cell of a form that a block is pasted into. */
export interface PasteCell {
  readonly row: number;
  readonly path: string;
}

export type PastedRows =
  | { readonly ok: true; readonly entered: Entered; readonly rows: number }
  | { readonly ok: false; readonly faults: readonly ListFault[] };

/** A form has no use for more: a run of a building has fewer legs, walls and zones. */
export const MOST_ROWS = 200;

/**
 * Rows of a spreadsheet as entries of the form. Without a cell they take the place of all rows of the group; with one they
 * fill the rows from there and leave the rest as it is. Headings may stand on top; then the columns may come in any order.
 * Lengths and numbers are taken as text, and read where every other entry is. All or nothing: a fault changes no entry.
 */
export function pasteRows(group: RowGroup, text: string, entered: Entered, at: PasteCell | null): PastedRows {
  const cells = splitRows(text);
  if ('faults' in cells) return { ok: false, faults: cells.faults };
  const columns = ROW_COLUMNS[group];
  const [first = []] = cells;
  const hasHeadings = isHeadings(first, columns);
  const under = hasHeadings ? underHeadings(first, columns) : inOrder(first, columns, at);
  if ('faults' in under) return { ok: false, faults: under.faults };
  const rows = hasHeadings ? cells.slice(1) : cells;
  const start = at?.row ?? 0;
  if (start + rows.length > MOST_ROWS) return { ok: false, faults: [tooMany(start + rows.length)] };
  const read = rows.map((row, index) => readRow(row, under, index + (hasHeadings ? 2 : 1)));
  const faults = read.flatMap((row) => row.faults);
  if (faults.length > 0) return { ok: false, faults };
  const filled = read.flatMap(({ texts }, index) =>
    texts.map(([path, cell]) => [rowName(group, start + index, path), cell] as const),
  );
  const rest = kept(group, entered, at);
  return {
    ok: true,
    entered: { ...Object.fromEntries(blank(group, start, read)), ...rest, ...Object.fromEntries(filled) },
    rows: rows.length,
  };
}

/** The cell that a form names; null where it names none of the group. */
export function pasteCell(group: RowGroup, name: string | undefined): PasteCell | null {
  const [, row, path] = new RegExp(`^${group}\\[(\\d{1,3})\\]\\.(\\w+)$`).exec(name ?? '') ?? [];
  const isColumn = ROW_COLUMNS[group].some((column) => column.path === path);
  return row !== undefined && path !== undefined && isColumn ? { row: Number(row), path } : null;
}

type Refused = { readonly faults: readonly ListFault[] };
type Placed = readonly {
  readonly index: number;
  readonly column: RowColumn | null;
  readonly unit: LengthUnit | null;
}[];

function splitRows(text: string): readonly (readonly string[])[] | Refused {
  const body = text.replace(/^\uFEFF/, '').replace(/\s+$/, '');
  const delimiter = body.includes('\t') ? '\t' : ';';
  try {
    // Inch marks in a cell that is not quoted are marks, not quotes: spreadsheets paste them bare.
    const cells: string[][] = parse(body, {
      delimiter,
      relax_quotes: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      record_delimiter: ['\r\n', '\n', '\r'],
    });
    return cells.filter((row) => row.some((cell) => cell !== ''));
  } catch {
    const remedy = 'Close each cell that begins with a quotation mark by another, and double the marks inside it.';
    return { faults: [{ row: null, column: null, value: '', problem: 'A quotation mark is not closed.', remedy }] };
  }
}

const COUNT = new Set(['no', 'nr', 'row', '']);

/** A row of headings has a known one and no figure. */
function isHeadings(row: readonly string[], columns: readonly RowColumn[]): boolean {
  const known = row.some((cell) => columns.some((column) => column.headings.includes(plainHeading(cell))));
  return known && !row.some((cell) => /\d/.test(cell));
}

function underHeadings(row: readonly string[], columns: readonly RowColumn[]): Placed | Refused {
  const faults: ListFault[] = [];
  const placed = row.map((heading, index) => {
    const plain = plainHeading(heading);
    const column = columns.find(({ headings }) => headings.includes(plain)) ?? null;
    if (column === null && !COUNT.has(plain)) faults.push(unknownHeading(heading, columns));
    return { index, column, unit: headingUnit(heading) };
  });
  return faults.length > 0 ? { faults } : placed;
}

function unknownHeading(heading: string, columns: readonly RowColumn[]): ListFault {
  const names = columns.map(({ name }) => name);
  const meant = nearestWord(heading, names);
  const remedy = meant ? `Did you mean ${meant}?` : `Take the column out, or call it ${sayList(names, 'or')}.`;
  return { row: 1, column: heading, value: heading, problem: 'This column is not known.', remedy };
}

/** Without headings the cells stand in the order of the form, from the cell on that they were pasted into. */
function inOrder(first: readonly string[], columns: readonly RowColumn[], at: PasteCell | null): Placed {
  const from = at === null ? 0 : columns.findIndex(({ path }) => path === at.path);
  const width = Math.max(first.length, columns.length - from);
  return Array.from({ length: width }, (_, index) => ({ index, column: columns[from + index] ?? null, unit: null }));
}

function readRow(cells: readonly string[], placed: Placed, row: number) {
  const faults: ListFault[] = [];
  const texts: [string, string][] = [];
  const beyond = cells.slice(placed.length).find((cell) => cell !== '');
  if (beyond !== undefined) faults.push(surplus(row, beyond, placed));
  for (const { index, column, unit } of placed) {
    const cell = cells[index];
    if (column === null) {
      const isCount = placed.some((one) => one.index > index && one.column !== null);
      if (cell !== undefined && cell !== '' && !isCount) faults.push(surplus(row, cell, placed));
      continue;
    }
    if (cell === undefined) continue;
    const read = readCell(cell, column, unit);
    if ('problem' in read) faults.push({ row, column: column.name, value: cell, ...read });
    else texts.push([column.path, read.text]);
  }
  return { faults, texts };
}

function surplus(row: number, value: string, placed: Placed): ListFault {
  const names = placed.flatMap(({ column }) => (column === null ? [] : [column.name]));
  const remedy = `Paste ${sayList(names, 'and')} alone, or put headings on top.`;
  return { row, column: null, value, problem: 'The row has more cells than there are columns.', remedy };
}

type ReadCell = { readonly text: string } | { readonly problem: string; readonly remedy: string };

function readCell(cell: string, column: RowColumn, unit: LengthUnit | null): ReadCell {
  switch (column.reading) {
    case 'text':
      return { text: cell };
    case 'number':
      return { text: cell.replace(/\s*min(utes)?\.?$/i, '') };
    case 'length':
      return { text: unit !== null && /^[-+]?[\d.,\s]+$/.test(cell) ? `${cell} ${unit}` : cell };
    default:
      return readChoice(cell, column.reading);
  }
}

function readChoice(cell: string, choices: readonly RowChoice[]): ReadCell {
  const plain = cell.toLowerCase().replace(/[^a-z]/g, '');
  const isBlank = /^[\s–—-]*$/.test(cell);
  const found = choices.find(({ words }) => words.some((word) => word.replaceAll(' ', '') === plain));
  if (found !== undefined && (plain !== '' || isBlank)) return { text: found.value };
  const offered = choices.map(({ words }) => words[0] ?? '');
  const meant = nearestWord(cell, offered);
  return {
    problem: `${sayValue(cell)} is not ${sayList(offered, 'or')}.`,
    remedy: meant ? `Did you mean ${meant}?` : 'Write one of these.',
  };
}

/** What the form would send for the choices of a row that the block says nothing of. */
function blank(group: RowGroup, start: number, rows: readonly unknown[]): [string, string][] {
  const choices = ROW_COLUMNS[group].filter(({ reading }) => typeof reading !== 'string');
  return rows.flatMap((_, index) =>
    choices.map(({ path, reading }): [string, string] => [
      rowName(group, start + index, path),
      typeof reading === 'string' ? '' : (reading[0]?.value ?? ''),
    ]),
  );
}

function kept(group: RowGroup, entered: Entered, at: PasteCell | null): Entered {
  if (at !== null) return entered;
  return Object.fromEntries(Object.entries(entered).filter(([name]) => !name.startsWith(`${group}[`)));
}

function tooMany(count: number): ListFault {
  const remedy = `Give at most ${sayNumber(MOST_ROWS)}; a longer way is several runs.`;
  return { row: null, column: null, value: '', problem: `These would be ${sayNumber(count)} rows.`, remedy };
}
