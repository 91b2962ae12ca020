import { TAXABLE, UNIT_ITEMS } from '../../domain/bid/bid-entries.ts';
import type { Entered, EntryFault, EntryOf } from '../form/entries.ts';
import { type Draft, type EntryLog, newLog, put, readEntry } from '../form/read-entry.ts';
import { valueAt } from '../form/write-entry.ts';
import type { BidDocument, ProjectDocument } from '../job-document.ts';
import { filledRows } from './filled-rows.ts';
import { BID_SECTIONS, type BidSection, type RowGroup } from './sections.ts';

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

export interface ReadBid {
  /** The bid with this form's entries as typed, for the job document's own check. */
  readonly bid: BidDocument;
  readonly faults: readonly EntryFault[];
  /** The field that a path of the bid was typed into: rows that were left empty are not counted in the document. */
  readonly fieldOf: (path: string) => string;
}

/** One of the forms of a bid as typed. What the form does not show stays as it was before. */
export function readBidForm(entered: Entered, project: Project, section: BidSection, before: BidDocument): ReadBid {
  const { keys, entries, rows } = BID_SECTIONS[section];
  const log = newLog(project);
  const draft: Draft = {};
  for (const entry of entries) put(draft, entry.path, readEntry(entry, entry.path, entered, log));
  const places: [string, string][] = [];
  for (const group of rows) put(draft, group.group, readRows(group, entered, before, log, places));
  const kept = Object.fromEntries(Object.entries(before).filter(([key]) => !keys.some((own) => own === key)));
  const bid = { ...kept, ...settled(draft, before) } as unknown as BidDocument; // checked next, key by key
  return { bid, faults: log.faults, fieldOf: (path) => fieldOf(path, places) };
}

/** A kind without a percentage is nothing yet; an empty list that was written stays written. */
function settled(draft: Draft, before: BidDocument): Draft {
  const isBare = (key: 'profit' | 'bond') => valueAt(draft, `${key}.percent`) === undefined;
  const bare = (['profit', 'bond'] as const).filter(
    (key) => isBare(key) && valueAt(draft, `${key}.scale`) === undefined,
  );
  const kept = Object.entries(draft).filter(([key]) => !bare.some((own) => own === key));
  const texts = (['inclusions', 'exclusions', 'qualifications'] as const).filter(
    (key) => draft[key] === undefined && before[key]?.length === 0,
  );
  const owners = tickedOf(UNIT_ITEMS, draft.ownerFurnished, before.ownerFurnished);
  return {
    ...Object.fromEntries(kept.filter(([key]) => key !== 'ownerFurnished')),
    ...Object.fromEntries(texts.map((key) => [key, []])),
    ...(owners.length > 0 || before.ownerFurnished?.length === 0 ? { ownerFurnished: owners } : {}),
  };
}

function readRows(
  { group, entries, choices, inner }: RowGroup,
  entered: Entered,
  before: BidDocument,
  log: EntryLog,
  places: [string, string][],
): unknown {
  const old: unknown = valueAt(before, group);
  const rows = filledRows(entered, group, [...choices, ...(inner?.choices ?? [])]);
  if (rows.length === 0) return Array.isArray(old) && old.length === 0 ? [] : undefined;
  return rows.map((row, index) => {
    const place = `${group}[${row}]`;
    places.push([`${group}[${index}]`, place]);
    const known: unknown = Array.isArray(old) ? old[row] : undefined;
    const draft = readRow(place, entries, entered, known, log);
    if (inner === undefined) return group === 'taxes' ? withBase(draft, known) : draft;
    const within = filledRows(entered, `${place}.${inner.group}`, inner.choices).map((line, at) => {
      places.push([`${group}[${index}].${inner.group}[${at}]`, `${place}.${inner.group}[${line}]`]);
      return readRow(`${place}.${inner.group}[${line}]`, inner.entries, entered, null, log);
    });
    return { ...draft, [inner.group]: within };
  });
}

function readRow(place: string, entries: readonly EntryOf[], entered: Entered, before: unknown, log: EntryLog): Draft {
  const draft: Draft = {};
  for (const entry of entries) {
    const value = readEntry(entry, `${place}.${entry.path}`, entered, log);
    const staysFalse = value === undefined && entry.reading.kind === 'tick' && valueAt(before, entry.path) === false;
    put(draft, entry.path, staysFalse ? false : value);
  }
  return draft;
}

/** The ticks of a tax as the list that the document has. */
function withBase(draft: Draft, known: unknown): Draft {
  return { ...draft, on: tickedOf(TAXABLE, valueAt(draft, 'on'), valueAt(known, 'on')) };
}

/** What is ticked, in the order that stood there where it is the same. */
function tickedOf(all: readonly string[], ticks: unknown, old: unknown): readonly unknown[] {
  const on = all.filter((one) => valueAt(ticks, one) === true);
  const isSame = Array.isArray(old) && old.length === on.length && on.every((one) => old.includes(one));
  return isSame ? old : on;
}

function fieldOf(path: string, places: readonly (readonly [string, string])[]): string {
  if (path === 'profit') return 'profit.kind';
  const within = places.filter(([own]) => path === own || path.startsWith(`${own}.`));
  const [own, field] = within.sort(([a], [b]) => b.length - a.length)[0] ?? ['', ''];
  return field + path.slice(own.length);
}
