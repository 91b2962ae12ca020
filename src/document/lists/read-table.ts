import { parse } from 'csv-parse/sync';
import type { LengthUnit } from '../../domain/units/read-length.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { sayList, sayNumber } from '../parsing/say.ts';
import { type Columns, headingUnit, plainHeading } from './columns.ts';
import type { ListFault } from './list-fault.ts';

export interface TableRow {
  /** As the spreadsheet numbers it. */
  readonly row: number;
  readonly cells: readonly string[];
}

export interface Column {
  readonly index: number;
  /** The unit that the heading gives bare numbers, if any. */
  readonly unit: LengthUnit | null;
}

export interface Table<Name extends string> {
  readonly columns: ReadonlyMap<Name, Column>;
  readonly rows: readonly TableRow[];
}

type Refused = { readonly faults: readonly ListFault[] };

/** Longer lists are split by people too: a job has fewer rows than this. */
const MOST_ROWS = 100_000;
const DELIMITERS = ['\t', ',', ';'] as const;

/**
 * Text that was pasted from a spreadsheet (tabs) or read from a CSV file (commas or semicolons) to rows of cells under
 * known columns. Rows without anything are passed over but counted, so that row numbers are the spreadsheet's own.
 */
export function readTable<Name extends string>(text: string, columns: Columns<Name>): Table<Name> | Refused {
  const body = text.replace(/^\uFEFF/, '');
  if (body.trim() === '') return refuse('The list is empty.', 'Paste the rows together with their headings.');
  const cells = splitCells(body, columns);
  if ('faults' in cells) return cells;
  if (cells.length > MOST_ROWS) {
    return refuse(
      `The list has ${sayNumber(cells.length)} rows.`,
      `Give at most ${sayNumber(MOST_ROWS)} rows at a time.`,
    );
  }
  return underColumns(cells, columns);
}

function refuse(problem: string, remedy: string, row: number | null = null, value = ''): Refused {
  return { faults: [{ row, column: null, value, problem, remedy }] };
}

type Cells = readonly (readonly string[])[];

/** Reads the text with each delimiter and keeps the reading in which most headings are known. */
function splitCells<Name extends string>(body: string, columns: Columns<Name>): Cells | Refused {
  const firstLine = body.split(/\r\n|\r|\n/, 1)[0] ?? '';
  const byKnown = DELIMITERS.map((delimiter) => {
    const headings = parseCells(firstLine, delimiter);
    return { delimiter, known: 'faults' in headings ? 0 : countKnown(headings[0] ?? [], columns) };
  }).sort((a, b) => b.known - a.known);
  const likeliest = byKnown[0]?.known ? byKnown[0].delimiter : mostFrequent(body);
  return parseCells(body, likeliest);
}

function mostFrequent(body: string): string {
  const counts = DELIMITERS.map((delimiter) => ({ delimiter, count: body.split(delimiter).length }));
  return counts.sort((a, b) => b.count - a.count)[0]?.delimiter ?? ',';
}

function parseCells(body: string, delimiter: string): Cells | Refused {
  try {
    // Inch marks inside a cell that is not quoted are marks, not quotes: spreadsheets paste them bare.
    return parse(body, {
      delimiter,
      relax_quotes: true,
      relax_column_count: true,
      trim: true,
      record_delimiter: ['\r\n', '\n', '\r'],
    });
  } catch (error) {
    const line = /line (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
    const remedy = 'Close each cell that begins with a quotation mark by another, and double the marks inside it.';
    return refuse('A quotation mark is not closed.', remedy, line === undefined ? null : Number(line));
  }
}

function countKnown<Name extends string>(headings: readonly string[], columns: Columns<Name>): number {
  return headings.filter((heading) => nameOf(heading, columns) !== undefined).length;
}

function nameOf<Name extends string>(heading: string, { names }: Columns<Name>): Name | undefined {
  const plain = plainHeading(heading);
  return keysOf(names).find((name) => [name, ...names[name]].some((word) => plainHeading(word) === plain));
}

function keysOf<Name extends string>(names: Readonly<Record<Name, unknown>>): Name[] {
  const keys: Name[] = [];
  for (const name in names) keys.push(name);
  return keys;
}

function underColumns<Name extends string>(cells: Cells, columns: Columns<Name>): Table<Name> | Refused {
  const [headings = [], ...below] = cells;
  if (countKnown(headings, columns) < 2) return refuseHeadings(cells, columns);
  const rows = below
    .map((row, i) => ({ row: i + 2, cells: row }))
    .filter(({ cells: row }) => row.some((cell) => cell !== ''));
  const found = new Map<Name, Column>();
  const faults: ListFault[] = [];
  headings.forEach((heading, index) => {
    const name = nameOf(heading, columns);
    if (name !== undefined && !found.has(name)) found.set(name, { index, unit: headingUnit(heading) });
    else faults.push(...judgeHeading(heading, index, name, rows, columns));
  });
  const missing = columns.required.filter((name) => !found.has(name));
  faults.push(...missing.map((name) => missingColumn(name, columns)), ...tooManyCells(rows, headings.length));
  if (rows.length === 0 && faults.length === 0)
    return refuse('There is no row below the headings.', 'Paste the rows too.');
  return faults.length > 0 ? { faults } : { columns: found, rows };
}

function judgeHeading<Name extends string>(
  heading: string,
  index: number,
  name: Name | undefined,
  rows: readonly TableRow[],
  columns: Columns<Name>,
): ListFault[] {
  const fault = { row: 1, column: heading || `column ${index + 1}`, value: heading };
  if (name !== undefined) {
    return [{ ...fault, problem: `A second column is called ${heading}.`, remedy: 'Keep one of the two.' }];
  }
  if (heading !== '') {
    const meant = nearestWord(heading, keysOf(columns.names));
    const known = `Take the column out, or call it one of ${sayList(keysOf(columns.names), 'or')}.`;
    return [{ ...fault, problem: 'This column is not known.', remedy: meant ? `Did you mean ${meant}?` : known }];
  }
  const isUsed = rows.some(({ cells }) => (cells[index] ?? '') !== '');
  const remedy =
    'Give each column its own heading: a heading that was merged over several columns names only the first.';
  return isUsed ? [{ ...fault, problem: 'This column has cells but no heading.', remedy }] : [];
}

function missingColumn<Name extends string>(name: Name, columns: Columns<Name>): ListFault {
  const remedy = `Add it. A list needs ${sayList(columns.required, 'and')}.`;
  return { row: 1, column: name, value: '', problem: `The column ${name} is missing.`, remedy };
}

function tooManyCells(rows: readonly TableRow[], width: number): ListFault[] {
  return rows.flatMap(({ row, cells }) => {
    const beyond = cells.slice(width).filter((cell) => cell !== '');
    if (beyond.length === 0) return [];
    const problem = `The row has ${beyond.length} more ${beyond.length === 1 ? 'cell' : 'cells'} than there are headings.`;
    const remedy = 'Put a cell that holds the separator itself, such as 12,500, in quotation marks.';
    return [{ row, column: null, value: beyond[0] ?? '', problem, remedy }];
  });
}

function refuseHeadings<Name extends string>(cells: Cells, columns: Columns<Name>): Refused {
  const first = (cells[0] ?? []).filter((cell) => cell !== '').join(' ');
  const later = cells.slice(1, 10).findIndex((row) => countKnown(row, columns) >= 2);
  if (later >= 0) {
    const problem = `Row 1 holds no headings; they stand in row ${later + 2}.`;
    return refuse(problem, `Take out what stands above row ${later + 2}, merged titles included.`, 1, first);
  }
  const isOneColumn = cells.every((row) => row.length === 1);
  const wanted = `The first row holds headings such as ${sayList(columns.required, 'and')}.`;
  return isOneColumn
    ? refuse('Only one column was found.', `Separate the cells by tabs, commas or semicolons. ${wanted}`, 1, first)
    : refuse('The first row holds no headings that are known.', wanted, 1, first);
}
