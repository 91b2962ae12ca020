import type { UnitSystem } from '../../domain/model.ts';
import { fromMm } from '../../domain/units/length.ts';
import { DISTANCE, type LengthRange } from '../../domain/units/parse-length.ts';
import { greatestLengthMm } from '../rules/run-extent.ts';
import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import type { TapDocument } from '../schema/tap.ts';
import { readFigure, readKnown, readText } from './cell.ts';
import { TAP_COLUMNS, type TapColumn } from './columns.ts';
import { judgeMerged } from './judge-merged.ts';
import type { ListFault, ReadList } from './list-fault.ts';
import { previewTaps, type RunTap, type TapsPreview } from './preview.ts';
import { readTable, type Table } from './read-table.ts';
import { inRowOrder, type ListLog, type RowTaker, rowTaker } from './row-taker.ts';
import { readLoadVA, readPhases, readPlace, readPowerFactor, readYesNo } from './tap-cells.ts';
import { EXTRA_COLUMNS, EXTRA_KEYS, readExtras } from './tap-extras.ts';
import { withTaps } from './with-list.ts';

/**
 * A list of taps, pasted or uploaded, to taps of runs that the job has; or everything that is wrong with it, by row and
 * column. Each row has a load in VA or in amperes.
 */
export function readTaps(text: string, job: JobDocument): ReadList<RunTap, TapsPreview> {
  const table = readTable<TapColumn>(text, TAP_COLUMNS);
  if ('faults' in table) return { ok: false, faults: table.faults };
  const log: ListLog = { faults: [], questions: [] };
  const rows = table.rows.map((row) => rowTaker(table, row, log));
  const runs = new Map(job.runs.map((run) => [run.id, run]));
  judgeDuplicates(rows, runs);
  const readRun = readKnown('run', runs);
  const made = rows.map((row) => ({ row: row.row, ...readTap(row, table, job.project.units, runs, readRun) }));
  if (log.faults.length > 0) return { ok: false, faults: inRowOrder(log.faults) };
  const taps = made.map(({ run, tap }) => ({ run, tap }));
  const faults = judgeMerged(withTaps(job, taps), (path) => placeInList(path, job, made));
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, made: taps, preview: previewTaps(taps, job), questions: log.questions };
}

type Runs = ReadonlyMap<string, RunDocument>;
type ReadRun = ReturnType<typeof readKnown>;

function judgeDuplicates(rows: readonly RowTaker<TapColumn>[], runs: Runs): void {
  const inJob = new Map([...runs].map(([id, run]) => [id, new Set(run.taps?.map((tap) => tap.id))]));
  const first = new Map<string, number>();
  for (const row of rows) {
    const [run, tap] = [row.text('run'), row.text('tap')];
    const key = JSON.stringify([run, tap]);
    const before = first.get(key);
    if (tap === '') continue;
    if (inJob.get(run)?.has(tap)) {
      row.refuse('tap', `Run ${run} already has tap ${tap}.`, 'Give it another label, or take the row out.');
    } else if (before !== undefined) {
      row.refuse(
        'tap',
        `Tap ${tap} of run ${run} stands in row ${before} already.`,
        'Give it another label, or take one row out.',
      );
    } else first.set(key, row.row);
  }
}

function readTap(
  row: RowTaker<TapColumn>,
  table: Table<TapColumn>,
  units: UnitSystem,
  runs: Runs,
  readRun: ReadRun,
): RunTap {
  const run = row.need('run', readRun) ?? '';
  const unit = table.columns.get('at')?.unit ?? null;
  const id = row.need('tap', readText) ?? '';
  const place = row.need('at', readPlace(units, unit, alongRun(runs.get(run)))) ?? { atMm: 0 };
  const phases = row.need('phases', readPhases) ?? 'L1';
  const neutral = row.take('neutral', readYesNo);
  const deviceA =
    row.need('device', readFigure({ '': 1, a: 1 }, 'the rating of the device in amperes, such as 30')) ?? 0;
  const load = readLoad(row);
  const powerFactor = row.take('pf', readPowerFactor);
  const serves = row.take('serves', readText);
  const pair = row.take('pair', readText);
  const tap: TapDocument = {
    id,
    ...place,
    phases,
    ...(neutral !== undefined && { neutral }),
    deviceA,
    ...load,
    ...(powerFactor !== undefined && { powerFactor }),
    ...(serves !== undefined && { serves }),
    ...(pair !== undefined && { pair }),
    ...readExtras(row, units, table.columns.get('drop')?.unit ?? null),
  };
  return { run, tap };
}

/** A tap stands within its run: a figure past its end was probably meant in another unit. */
function alongRun(run: RunDocument | undefined): LengthRange {
  const length = greatestLengthMm(run);
  return length === undefined ? DISTANCE : { min: 0, max: fromMm(length) };
}

function readLoad(row: RowTaker<TapColumn>): Pick<TapDocument, 'loadVA' | 'loadA'> {
  const [va, a] = [row.text('load VA'), row.text('load A')];
  if (va === '' && a === '') row.refuse('load VA', 'The tap has no load.', 'Give its load in VA, or in amperes.');
  if (va !== '' && a !== '')
    row.refuse('load A', 'The tap has a load in VA and one in amperes.', 'Keep one of the two.');
  const loadVA = row.take('load VA', readLoadVA);
  const loadA = row.take('load A', readFigure({ '': 1, a: 1 }, 'the load in amperes'));
  return { ...(loadVA !== undefined && { loadVA }), ...(loadA !== undefined && { loadA }) };
}

type Made = readonly (RunTap & { readonly row: number })[];

/** Which cell a path of the job with the list in it stands for: taps of the list follow those that the run had. */
function placeInList(path: string, job: JobDocument, made: Made): Pick<ListFault, 'row' | 'column' | 'value'> {
  const [, run, tap, rest = ''] = /^runs\[(\d+)\]\.taps\[(\d+)\]\.?(.*)$/.exec(path) ?? [];
  const before = job.runs[Number(run)];
  const ofRun = made.filter((row) => row.run === before?.id);
  const row = before === undefined ? undefined : ofRun[Number(tap) - (before.taps?.length ?? 0)];
  const column = COLUMN_OF.find(([prefix]) => rest.startsWith(prefix))?.[1] ?? null;
  return { row: row?.row ?? null, column: row ? column : path, value: '' };
}

const COLUMN_OF: readonly (readonly [string, TapColumn])[] = [
  ['id', 'tap'],
  ['atMm', 'at'],
  ['near', 'at'],
  ['deviceA', 'device'],
  ['loadVA', 'load VA'],
  ['loadA', 'load A'],
  ['powerFactor', 'pf'],
  ['serves', 'serves'],
  ['pair', 'pair'],
  ...EXTRA_COLUMNS.map((column) => [EXTRA_KEYS[column], column] as const),
];
