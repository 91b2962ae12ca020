import type { Entered } from '../form/entries.ts';
import { valueAt, writeEntry } from '../form/write-entry.ts';
import type { ProjectDocument, RunDocument } from '../job-document.ts';
import { ROW_ENTRIES, ROW_GROUPS, rowName, SINGLE_ENTRIES } from './entries.ts';
import { writeTapSheet } from './tap-sheet.ts';

/** A run as the texts of its form, each by the path of what it writes. Read back untouched they give the same run. */
export function writeRunForm(run: RunDocument, project: Pick<ProjectDocument, 'units' | 'currency'>): Entered {
  const singles = SINGLE_ENTRIES.map(
    (entry) => [entry.path, writeEntry(entry, valueAt(run, entry.path), project)] as const,
  );
  const rows = ROW_GROUPS.flatMap((group) =>
    (run[group] ?? []).flatMap((row, index) =>
      ROW_ENTRIES[group].map(
        (entry) => [rowName(group, index, entry.path), writeEntry(entry, valueAt(row, entry.path), project)] as const,
      ),
    ),
  );
  return { ...Object.fromEntries([...singles, ...rows]), taps: writeTapSheet(run, project.units) };
}
