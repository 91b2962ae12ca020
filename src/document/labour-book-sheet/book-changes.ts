import { fieldChanges } from '../comparing/field-changes.ts';
import type { LabourBookDocument } from '../job-document.ts';
import { type BookProject, type BookRow, bookRows } from './book-rows.ts';
import type { BookColumn } from './columns.ts';

/** One value of a labour book that differs, in the words of its sheet; empty where one of the two does not have it. */
export interface BookChange {
  readonly part: BookRow['part'];
  readonly name: string;
  /** The rated current, length or height of the row; empty for what has none. */
  readonly length: string;
  readonly column: BookColumn;
  readonly before: string;
  readonly after: string;
}

/** Every value that differs between two labour books, in the order of their sheets. Equal books differ in nothing. */
export function bookChanges(
  before: LabourBookDocument | null,
  after: LabourBookDocument,
  project: BookProject,
): readonly BookChange[] {
  const was = byKey(before === null ? [] : bookRows(before, project));
  const is = byKey(bookRows(after, project));
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [old, now] = [was.get(key), is.get(key)];
    const { part, name, rating = '', length = '' } = (now ?? old) as BookRow;
    return fieldChanges(cellsOf(old), cellsOf(now)).map((change) => ({
      part,
      name,
      length: [rating === '' ? '' : `${rating} A`, length].filter(Boolean).join(', '),
      column: change.path as BookColumn,
      before: said(change.before),
      after: said(change.after),
    }));
  });
}

/** Rows by what names them; of several crew members in one role, each by its place among them. */
function byKey(rows: readonly BookRow[]): ReadonlyMap<string, BookRow> {
  const keyed = new Map<string, BookRow>();
  for (const row of rows) {
    const plain = JSON.stringify([row.part, row.name, row.rating ?? '', row.length ?? '']);
    let key = plain;
    for (let again = 2; keyed.has(key); again++) key = `${plain} ${again}`;
    keyed.set(key, row);
  }
  return keyed;
}

function cellsOf(row: BookRow | undefined): Readonly<Record<string, string>> {
  if (row === undefined) return {};
  const { part: _part, name: _name, rating: _rating, length: _length, ...cells } = row;
  return cells;
}

function said(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
