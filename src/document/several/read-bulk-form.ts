import { COORDINATE, DISTANCE, SIZE } from '../../domain/units/parse-length.ts';
import { type Entered, type EntryFault, type EntryOf, length, number, text, weight } from '../form/entries.ts';
import { newLog, readEntry } from '../form/read-entry.ts';
import type { ProjectDocument } from '../job-document.ts';

/** Written in a field to take away what runs state there. */
export const NONE = 'none';

/** The entries of the form, each by the field that it is typed into. */
const ENTRIES: readonly (EntryOf & { readonly clears: 'may be cleared' | 'stays' })[] = [
  { ...text('level'), clears: 'stays' },
  { ...text('type'), clears: 'stays' },
  { ...text('area'), clears: 'may be cleared' },
  { ...text('side'), clears: 'may be cleared' },
  { ...text('conductorSide'), clears: 'stays' },
  { ...length('elevationMm', COORDINATE), clears: 'stays' },
  { ...text('supply'), clears: 'may be cleared' },
  { ...number('deviceA'), clears: 'may be cleared' },
  { ...number('faultKA'), clears: 'may be cleared' },
  { ...number('xOverR'), clears: 'may be cleared' },
  { ...number('terminations'), clears: 'stays' },
  { ...length('dropMm', DISTANCE), clears: 'may be cleared' },
  { ...text('rod'), clears: 'may be cleared' },
  { ...length('rodStockMm', SIZE), clears: 'may be cleared' },
  { ...text('attachment'), clears: 'may be cleared' },
  { ...weight('supportCapacityKg'), clears: 'may be cleared' },
];

export interface ReadBulk {
  /** For the schema's own check: what could not be read is left out and stands among the faults. */
  readonly set: unknown;
  readonly faults: readonly EntryFault[];
}

/** The form of a change to many runs; an empty field leaves what stands. */
export function readBulkForm(entered: Entered, project: Pick<ProjectDocument, 'units' | 'currency'>): ReadBulk {
  const log = newLog(project);
  const set: Record<string, unknown> = {};
  for (const entry of ENTRIES) {
    const isNone = (entered[entry.path] ?? '').trim().toLowerCase() === NONE;
    if (isNone && entry.clears === 'stays') {
      log.faults.push({ field: entry.path, said: 'Every run has one. Choose another, or leave the field empty.' });
      continue;
    }
    const value = isNone ? null : readEntry(entry, entry.path, entered, log);
    if (value !== undefined) set[entry.path] = value;
  }
  const read = (name: string, range: typeof SIZE) => readEntry(length(name, range), name, entered, log);
  const structure = structureOf(entered, read('pitchMm', SIZE), read('offsetMm', COORDINATE), log.faults);
  const end = endOf(entered, read('shortMm', DISTANCE), read('longMm', DISTANCE), log.faults);
  return {
    set: {
      ...set,
      ...(structure === undefined ? {} : { structure }),
      ...(end === undefined ? {} : { end }),
    },
    faults: log.faults,
  };
}

function structureOf(entered: Entered, pitchMm: unknown, offsetMm: unknown, faults: EntryFault[]): unknown {
  const kind = entered.structure ?? '';
  if (kind === 'continuous') return { kind };
  if (kind !== 'grid' && pitchMm === undefined && offsetMm === undefined) return undefined;
  const isBroken = faults.some(({ field }) => field === 'pitchMm' || field === 'offsetMm');
  if (pitchMm === undefined && !isBroken)
    faults.push({ field: 'pitchMm', said: 'Lines need their distance. Give it, such as 1200 mm or 4 ft.' });
  return pitchMm === undefined ? undefined : { kind: 'grid', pitchMm, offsetMm: offsetMm ?? 0 };
}

function endOf(entered: Entered, shortMm: unknown, longMm: unknown, faults: EntryFault[]): unknown {
  if (entered.end === 'exact') return null;
  if (shortMm !== undefined || longMm !== undefined) return { shortMm: shortMm ?? 0, longMm: longMm ?? 0 };
  const isBroken = faults.some(({ field }) => field === 'shortMm' || field === 'longMm');
  if (entered.end === 'range' && !isBroken)
    faults.push({ field: 'shortMm', said: 'Neither distance is given. Say how far it may end short or long.' });
  return undefined;
}
