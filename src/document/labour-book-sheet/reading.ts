import { DISTANCE } from '../../domain/units/parse-length.ts';
import type { Draft } from '../form/read-entry.ts';
import { type Cell, readEach, readLengthCell } from '../lists/cell.ts';
import type { Table } from '../lists/read-table.ts';
import type { RowTaker } from '../lists/row-taker.ts';
import { sayList } from '../parsing/say.ts';
import { type BookProject, NONE } from './book-rows.ts';
import { BOOK_COLUMNS, type BookColumn } from './columns.ts';
import { readHours } from './number-cell.ts';

export type Row = RowTaker<BookColumn>;

/** What the reading of a sheet gathers. */
export interface Reading {
  readonly table: Table<BookColumn>;
  readonly project: BookProject;
  readonly draft: Draft;
  /** Where each part of the document was read, so that its own check can name the row. */
  readonly places: { readonly path: string; readonly row: number }[];
  /** The row that named a thing first. */
  readonly seen: Map<string, number>;
}

/** Notes where a thing stands, and refuses it where it stands already. */
export function isFirst(key: string, row: Row, { seen }: Reading): boolean {
  const before = seen.get(key);
  if (before === undefined) {
    seen.set(key, row.row);
    return true;
  }
  row.refuse('name', `This stands in row ${before} already.`, 'Keep the row that holds, and take the other out.');
  return false;
}

/** Cells that a row of this part does not have must be empty: what stands there was meant for another row. */
export function onlyCells(row: Row, part: string, allowed: readonly BookColumn[]): void {
  for (const column of Object.keys(BOOK_COLUMNS.names) as BookColumn[]) {
    if (column === 'part' || column === 'name' || allowed.includes(column) || row.text(column) === '') continue;
    const remedy = `Empty it: a row of ${part} has ${sayList(allowed, 'and')} alone.`;
    row.refuse(column, `A row of ${part} has no ${column}.`, remedy);
  }
}

export const ofHours = (row: Row) => ({
  low: row.need('low', readHours),
  likely: row.need('likely', readHours),
  high: row.need('high', readHours),
});

export function lengthCell({ table, project }: Reading) {
  return readLengthCell(project.units, table.columns.get('length')?.unit ?? null, DISTANCE);
}

/** Names separated by `;`, or the word that says that there are none. */
export function readListed<T>(read: (text: string) => Cell<T>): (text: string) => Cell<T[]> {
  return (text) => (text.toLowerCase() === NONE ? { value: [] } : readEach(read)(text));
}
