import type { UnitSystem } from '../../domain/model.ts';
import { formatLength, writeLength } from '../../domain/units/format-length.ts';
import { parseLength } from '../../domain/units/parse-length.ts';
import type { Entered, EntryFault, EntryOf } from '../form/entries.ts';
import { ROW_ENTRIES, ROW_GROUPS, SINGLE_ENTRIES } from './entries.ts';

/** How each length was read that is not written as the program would: `10.5` in feet is read `10'-6"`. */
export function lengthReadings(entered: Entered, units: UnitSystem): EntryFault[] {
  const single = SINGLE_ENTRIES.map((entry) => ({ entry, field: entry.path }));
  const rows = Object.keys(entered).flatMap((field) => {
    const [, group, path] = /^(\w+)\[\d{1,3}\]\.(\w+)$/.exec(field) ?? [];
    const entries = ROW_GROUPS.find((one) => one === group);
    const entry = entries && ROW_ENTRIES[entries].find((one) => one.path === path);
    return entry === undefined ? [] : [{ entry, field }];
  });
  return [...single, ...rows].flatMap(({ entry, field }) => {
    const said = readingOf(entry, entered[field] ?? '', units);
    return said === null ? [] : [{ field, said }];
  });
}

function readingOf({ reading }: EntryOf, typed: string, units: UnitSystem): string | null {
  const text = typed.trim();
  if (reading.kind !== 'length' || text === '') return null;
  const parsed = parseLength(text, units, reading.range);
  if (!parsed.ok || parsed.note !== undefined) return null; // its fault or its question says more
  const shown = formatLength(parsed.length, units);
  const usual = [shown, writeLength(parsed.length, units), ...(units === 'metric' && /^\d+$/.test(text) ? [text] : [])];
  return usual.some((one) => plain(one) === plain(text)) ? null : `= ${shown}`;
}

function plain(text: string): string {
  return text.replaceAll(' ', '');
}
