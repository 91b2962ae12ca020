import type { UnitSystem } from '../../domain/model.ts';
import { toMm } from '../../domain/units/length.ts';
import { parseLength } from '../../domain/units/parse-length.ts';
import { parseWeight } from '../../domain/units/parse-quantity.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import type { ListFault } from '../lists/list-fault.ts';
import {
  type Entered,
  type EntryOf,
  ROW_ENTRIES,
  ROW_GROUPS,
  type RowGroup,
  rowName,
  SINGLE_ENTRIES,
} from './entries.ts';
import { readTapSheet } from './tap-sheet.ts';

/** What is wrong with one entry, or what is asked about it; beside the field of this name. */
export interface EntryFault {
  readonly field: string;
  readonly said: string;
}

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
  const log: Log = { units: job.project.units, faults: [], questions: [] };
  const draft: Draft = {};
  for (const entry of SINGLE_ENTRIES) put(draft, entry.path, read(entry, entry.path, entered, log));
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

type Draft = Record<string, unknown>;

interface Log {
  readonly units: UnitSystem;
  readonly faults: EntryFault[];
  readonly questions: EntryFault[];
}

function read({ reading }: EntryOf, field: string, entered: Entered, log: Log): unknown {
  const text = (entered[field] ?? '').trim();
  if (text === '') return undefined;
  switch (reading.kind) {
    case 'text':
      return text;
    case 'tick':
      return text === 'yes' ? true : undefined;
    case 'number':
      return readNumber(text, field, log);
    case 'weight': {
      const parsed = parseWeight(text);
      if (!parsed.ok) return refuse(log, field, parsed);
      return Number(parsed.value.toPrecision(12));
    }
    case 'length': {
      const parsed = parseLength(text, log.units, reading.range);
      if (!parsed.ok) return refuse(log, field, parsed);
      if (parsed.note !== undefined) log.questions.push({ field, said: parsed.note });
      return toMm(parsed.length);
    }
  }
}

function refuse(log: Log, field: string, { problem, remedy }: { problem: string; remedy: string }): undefined {
  log.faults.push({ field, said: `${problem} ${remedy}` });
}

function readNumber(text: string, field: string, log: Log): number | undefined {
  const plain = text.replace(/^(-?\d+),(\d{1,2})$/, '$1.$2').replace(/(?<=\d),(?=\d{3}(\D|$))/g, '');
  if (/^-?(\d+(\.\d*)?|\.\d+)$/.test(plain)) return Number(plain);
  return refuse(log, field, {
    problem: `"${text.slice(0, 40)}" is not a number.`,
    remedy: 'Write it like 225 or 0.2.',
  });
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

function readRow(group: RowGroup, row: number, entered: Entered, log: Log): Draft {
  const draft: Draft = {};
  for (const entry of ROW_ENTRIES[group])
    put(draft, entry.path, read(entry, rowName(group, row, entry.path), entered, log));
  return draft;
}

function put(draft: Draft, path: string, value: unknown): void {
  if (value === undefined) return;
  const keys = path.split('.');
  const last = keys.pop() ?? path;
  let place: Draft = draft;
  for (const key of keys) {
    place[key] ??= {};
    place = place[key] as Draft;
  }
  place[last] = value;
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
