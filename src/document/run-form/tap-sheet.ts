import { parse } from 'csv-parse/sync';
import type { UnitSystem } from '../../domain/model.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import { TAP_COLUMNS, type TapColumn } from '../lists/columns.ts';
import type { ListFault } from '../lists/list-fault.ts';
import { readTable } from '../lists/read-table.ts';
import { readTaps } from '../lists/read-taps.ts';
import { EXTRA_COLUMNS, EXTRA_KEYS, type Extras } from '../lists/tap-extras.ts';
import { writeTaps } from '../lists/write-taps.ts';
import { MAX_LEG_MM } from '../schema/fields.ts';
import type { TapDocument } from '../schema/tap.ts';

/** The run's tap-offs as the rows of a spreadsheet: the columns of the tap list, separated by tabs, without the run. */
export function writeTapSheet(run: RunDocument, units: UnitSystem): string {
  const list = writeTaps({ ...EMPTY_JOB, project: { ...EMPTY_JOB.project, units }, runs: [run] });
  const rows: string[][] = parse(list);
  return rows.map(([, ...cells]) => cells.join('\t')).join('\n');
}

const EMPTY_JOB: JobDocument = {
  format: 'busway-jobbook/1',
  project: {
    number: 'x',
    name: 'x',
    units: 'ft-in',
    currency: 'USD',
    codeBasis: 'NEC',
    frequencyHz: 60,
    voltageLL: 208,
    voltageLN: 120,
  },
  levels: [],
  buswayTypes: [],
  runs: [],
};

export type TapSheet =
  | { readonly ok: true; readonly taps: readonly TapDocument[]; readonly questions: readonly ListFault[] }
  | { readonly ok: false; readonly faults: readonly ListFault[] };

/** A run as far as it is typed: its label, level and type may be empty yet, which its own check tells. */
interface TypedRun extends Pick<RunDocument, 'legs'> {
  readonly id?: string | undefined;
  readonly level?: string | undefined;
  readonly type?: string | undefined;
}

/**
 * Tap-offs from the rows of a spreadsheet, with the columns of the tap list; the column of the run may be left out. What the
 * sheet has no column for is kept from the tap-off of the same label in `before`; under a column that it has, an empty cell
 * says nothing.
 */
export function readTapSheet(sheet: string, job: JobDocument, run: TypedRun, before: readonly TapDocument[]): TapSheet {
  const text = sheet.replace(/\r\n?/g, '\n').replace(/^\n+|\s+$/g, '');
  if (text === '' || onlyHeadings(text)) return { ok: true, taps: [], questions: [] };
  const own = bare(run, job);
  const sheetOfRun = withRun(text, own.id);
  const read = readTaps(sheetOfRun, { ...EMPTY_JOB, ...ofJob(job), runs: [own] });
  if (!read.ok) return read;
  const known = new Map(before.map((tap) => [tap.id, tap]));
  const columns = columnsOf(sheetOfRun);
  return {
    ok: true,
    taps: read.made.map(({ tap }) => ({ ...besideTheSheet(known.get(tap.id), columns), ...tap })),
    questions: read.questions,
  };
}

/** The run with nothing but what a tap-off is read against, so that only faults of the sheet are found here. */
function bare(run: TypedRun, { levels, buswayTypes }: JobDocument): RunDocument {
  const { id = 'this run', level = levels[0]?.id ?? '', type = buswayTypes[0]?.id ?? '', legs } = run;
  const isRead = legs.length > 0 && legs.every((leg) => leg.lengthMm !== undefined);
  const way = isRead
    ? legs.map(({ lengthMm, turn }) => ({ lengthMm, turn }))
    : [{ lengthMm: MAX_LEG_MM, turn: 'none' as const }];
  return { id, level, type, legs: way, conductorSide: 'left', feed: { kind: 'end' } };
}

function ofJob({ project, levels, buswayTypes }: JobDocument) {
  return { project, levels, buswayTypes };
}

/** A sheet that was emptied but for its headings holds no tap-offs, and that is no fault. */
function onlyHeadings(text: string): boolean {
  return !text.includes('\n') && /\btap\b/i.test(text) && /\bphases?\b/i.test(text);
}

function withRun(text: string, run: string): string {
  const [headings = '', ...rows] = text.split('\n');
  const delimiter = ['\t', ',', ';'].find((one) => headings.includes(one)) ?? '\t';
  if (headings.split(delimiter).some((heading) => heading.trim().toLowerCase() === 'run')) return text;
  const cell = `"${run.replaceAll('"', '""')}"`;
  const numbered = rows.map((row) => (row.trim() === '' ? row : `${cell}${delimiter}${row}`));
  return [`run${delimiter}${headings}`, ...numbered].join('\n');
}

/** What a tap-off says in columns that the sheet leaves out. */
function besideTheSheet(tap: TapDocument | undefined, columns: ReadonlySet<TapColumn>): Extras {
  if (tap === undefined) return {};
  const keys = EXTRA_COLUMNS.filter((column) => !columns.has(column)).map((column) => EXTRA_KEYS[column]);
  return Object.fromEntries(keys.flatMap((key) => (tap[key] === undefined ? [] : [[key, tap[key]]])));
}

function columnsOf(text: string): ReadonlySet<TapColumn> {
  const table = readTable<TapColumn>(text, TAP_COLUMNS);
  return new Set('faults' in table ? [] : table.columns.keys());
}
