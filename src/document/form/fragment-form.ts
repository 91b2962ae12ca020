import type { UnitSystem } from '../../domain/model.ts';
import type { Entered, EntryOf } from './entries.ts';
import { type Draft, type EntryLog, put, readEntry } from './read-entry.ts';
import { valueAt, writeEntry } from './write-entry.ts';

/** A part of the job document as the texts of its form. */
export function writeFragment(
  thing: unknown,
  entries: readonly EntryOf[],
  project: { readonly units: UnitSystem; readonly currency: string },
): Entered {
  return Object.fromEntries(
    entries.map((entry) => [entry.path, writeEntry(entry, valueAt(thing, entry.path), project)]),
  );
}

/**
 * What was typed as a part of the job document; empty entries are left out. A tick that was written as `false` before and is
 * not ticked stays `false`, so that saving untouched changes nothing.
 */
export function readFragment(entered: Entered, entries: readonly EntryOf[], before: unknown, log: EntryLog): Draft {
  const draft: Draft = {};
  for (const entry of entries) {
    const value = readEntry(entry, entry.path, entered, log);
    const staysFalse = value === undefined && entry.reading.kind === 'tick' && valueAt(before, entry.path) === false;
    put(draft, entry.path, staysFalse ? false : value);
  }
  return draft;
}
