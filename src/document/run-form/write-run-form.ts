import type { UnitSystem } from '../../domain/model.ts';
import type { RunDocument } from '../job-document.ts';
import { writeMm } from '../lists/write-mm.ts';
import { type Entered, type EntryOf, ROW_ENTRIES, ROW_GROUPS, rowName, SINGLE_ENTRIES } from './entries.ts';
import { writeTapSheet } from './tap-sheet.ts';

/** A run as the texts of its form, each by the path of what it writes. Read back untouched they give the same run. */
export function writeRunForm(run: RunDocument, units: UnitSystem): Entered {
  const singles = SINGLE_ENTRIES.map((entry) => [entry.path, write(entry, at(run, entry.path), units)] as const);
  const rows = ROW_GROUPS.flatMap((group) =>
    (run[group] ?? []).flatMap((row, index) =>
      ROW_ENTRIES[group].map(
        (entry) => [rowName(group, index, entry.path), write(entry, at(row, entry.path), units)] as const,
      ),
    ),
  );
  return { ...Object.fromEntries([...singles, ...rows]), taps: writeTapSheet(run, units) };
}

function write({ reading }: EntryOf, value: unknown, units: UnitSystem): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number' && reading.kind === 'length') return writeMm(value, units);
  if (reading.kind === 'weight') return `${value} kg`;
  if (reading.kind === 'tick') return value === true ? 'yes' : '';
  return String(value);
}

function at(thing: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
      thing,
    );
}
