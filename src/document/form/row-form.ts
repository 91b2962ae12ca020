import type { UnitSystem } from '../../domain/model.ts';
import type { Entered, EntryOf } from './entries.ts';
import { type Draft, type EntryLog, put, readEntry } from './read-entry.ts';
import { valueAt, writeEntry } from './write-entry.ts';

/** Entries that stand in rows; the names of the fields are `group[row].path`. */
export interface RowsOf {
  readonly group: string;
  readonly entries: readonly EntryOf[];
}

/** A list of things as the texts of its rows. */
export function writeRowForm(
  things: readonly object[],
  { group, entries }: RowsOf,
  project: { readonly units: UnitSystem; readonly currency: string },
): Entered {
  return Object.fromEntries(
    things.flatMap((thing, row) =>
      entries.map((entry) => [
        `${group}[${row}].${entry.path}`,
        writeEntry(entry, valueAt(thing, entry.path), project),
      ]),
    ),
  );
}

/** The same texts with empty rows taken out, so that a row's number is its place in the list that is read. */
export function closeRows(entered: Entered, rows: readonly RowsOf[]): Entered {
  const closed = { ...entered };
  for (const { group, entries } of rows) {
    const texts = rowsIn(entered, group).map((row) => entries.map(({ path }) => entered[`${group}[${row}].${path}`]));
    for (const key of Object.keys(closed)) if (key.startsWith(`${group}[`)) delete closed[key];
    texts
      .filter((row) => row.some((text) => (text ?? '').trim() !== ''))
      .forEach((row, place) => {
        row.forEach((text, i) => {
          closed[`${group}[${place}].${entries[i]?.path}`] = text ?? '';
        });
      });
  }
  return closed;
}

/** What was typed in rows, for the document's own check; `closeRows` comes first. */
export function readRowForm(entered: Entered, { group, entries }: RowsOf, log: EntryLog): Draft[] {
  return rowsIn(entered, group).map((row) => {
    const draft: Draft = {};
    for (const entry of entries)
      put(draft, entry.path, readEntry(entry, `${group}[${row}].${entry.path}`, entered, log));
    return draft;
  });
}

/** Numbers of the rows that there are fields of, in order. */
export function rowsIn(entered: Entered, group: string): readonly number[] {
  const numbers = Object.keys(entered).flatMap((key) => {
    if (!key.startsWith(`${group}[`)) return [];
    const number = Number(key.slice(group.length + 1, key.indexOf(']', group.length)));
    return Number.isInteger(number) ? [number] : [];
  });
  return [...new Set(numbers)].sort((a, b) => a - b);
}
