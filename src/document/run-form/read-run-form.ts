import type { Entered, EntryFault } from '../form/entries.ts';
import { type Draft, type EntryLog, newLog, put, readEntry } from '../form/read-entry.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import type { ListFault } from '../lists/list-fault.ts';
import { ROW_ENTRIES, ROW_GROUPS, type RowGroup, rowName, SINGLE_ENTRIES } from './entries.ts';
import { readTapSheet } from './tap-sheet.ts';

export interface ReadRun {
  /** As typed, for the job document's own check; what could not be read is left out and stands among the faults. */
  readonly run: RunDocument;
  readonly faults: readonly EntryFault[];
  /** Taken as typed, and worth a second look. */
  readonly questions: readonly EntryFault[];
  readonly tapFaults: readonly ListFault[];
  readonly tapQuestions: readonly ListFault[];
  /** The field that a path of the run's document was typed into: rows that were left empty are not counted there. */
  readonly fieldOf: (path: string) => string;
}

/**
 * A run from what was typed into its form. Empty entries are left out, rows without any text passed over, and everything
 * that cannot be read is told at once. `before` is the run as it stood: what the form does not show is kept from it.
 */
export function readRunForm(entered: Entered, job: JobDocument, before: RunDocument | null): ReadRun {
  const log = newLog(job.project);
  const draft: Draft = {};
  for (const entry of SINGLE_ENTRIES) put(draft, entry.path, readEntry(entry, entry.path, entered, log));
  const rowsOf = new Map<RowGroup, readonly number[]>();
  for (const group of ROW_GROUPS) {
    const rows = filledRows(group, entered);
    rowsOf.set(group, rows);
    const read = rows.map((row) => readRow(group, row, entered, log));
    if (group === 'legs' || read.length > 0) draft[group] = read;
  }
  const run = asWritten(shaped(draft), before);
  const taps = readTapSheet(entered.taps ?? '', job, run, before?.taps ?? []);
  const tapsOf = taps.ok && (taps.taps.length > 0 || before?.taps !== undefined) ? { taps: [...taps.taps] } : {};
  return {
    run: { ...run, ...tapsOf },
    faults: log.faults,
    questions: log.questions,
    tapFaults: taps.ok ? [] : taps.faults,
    tapQuestions: taps.ok ? taps.questions : [],
    fieldOf: (path) => fieldOf(path, rowsOf),
  };
}

/** Rows with any text in them, by their place in the form. */
function filledRows(group: RowGroup, entered: Entered): number[] {
  const rows = new Set<number>();
  const pattern = new RegExp(`^${group}\\[(\\d{1,3})\\]\\.`);
  for (const [name, text] of Object.entries(entered)) {
    const row = pattern.exec(name)?.[1];
    const isChoice = name.endsWith('.turn') || name.endsWith('.kind');
    if (row !== undefined && text.trim() !== '' && !isChoice) rows.add(Number(row));
  }
  return [...rows].sort((a, b) => a - b);
}

function readRow(group: RowGroup, row: number, entered: Entered, log: EntryLog): Draft {
  const draft: Draft = {};
  for (const entry of ROW_ENTRIES[group])
    put(draft, entry.path, readEntry(entry, rowName(group, row, entry.path), entered, log));
  return draft;
}

/** What the form leaves to the reader: a feed that was not named is an end feed; a leg without a turn goes straight on. */
function shaped(draft: Draft): RunDocument {
  const legs = ((draft.legs as Draft[] | undefined) ?? []).map((leg) => ({ turn: 'none', ...leg }));
  const structure = draft.structure as { kind?: string; offsetMm?: number } | undefined;
  const { structure: _left, ...rest } = draft;
  return {
    ...rest,
    legs,
    ...(structure?.kind === undefined
      ? {}
      : { structure: structure.kind === 'grid' ? { offsetMm: 0, ...structure } : { kind: structure.kind } }),
  } as unknown as RunDocument; // the job document's own check reads it next, key by key
}

/** An absent value and its explicit twin mean the same: what was written stays as it was written. */
function asWritten(run: RunDocument, before: RunDocument | null): RunDocument {
  if (before === null) return run;
  const { feed } = before;
  return {
    ...run,
    ...(before.side === null && run.side === undefined ? { side: null } : {}),
    ...(before.crossings?.length === 0 && run.crossings === undefined ? { crossings: [] } : {}),
    ...(before.noJoint?.length === 0 && run.noJoint === undefined ? { noJoint: [] } : {}),
    // The form does not show it: the office lets go of it on the run's page.
    ...(before.fieldHold === undefined ? {} : { fieldHold: before.fieldHold }),
    ...(before.noSupport?.length === 0 && run.noSupport === undefined ? { noSupport: [] } : {}),
    feed: {
      ...run.feed,
      ...(feed.deviceHundredPercent === false && run.feed?.deviceHundredPercent === undefined
        ? { deviceHundredPercent: false }
        : {}),
    },
  };
}

function fieldOf(path: string, rowsOf: ReadonlyMap<RowGroup, readonly number[]>): string {
  if (path.startsWith('taps')) return 'taps';
  const [, group, index, rest = ''] = /^(legs|crossings|noJoint|noSupport)\[(\d+)\](.*)$/.exec(path) ?? [];
  if (group === undefined) return path;
  const row = rowsOf.get(group as RowGroup)?.[Number(index)] ?? Number(index);
  const named = rest === '' ? `.${ROW_ENTRIES[group as RowGroup][0]?.path}` : rest;
  return `${group}[${row}]${named}`;
}
