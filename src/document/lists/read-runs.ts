import type { UnitSystem } from '../../domain/model.ts';
import { METRE } from '../../domain/units/length.ts';
import { LEG, type LengthRange } from '../../domain/units/parse-length.ts';
import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import { type Cell, readFigure, readKnown, readLengthCell, readOneOf, readText } from './cell.ts';
import { RUN_COLUMNS, type RunColumn } from './columns.ts';
import { readFeed } from './feed-cell.ts';
import { judgeMerged } from './judge-merged.ts';
import type { ListFault, ReadList } from './list-fault.ts';
import { previewRuns, type RunsPreview } from './preview.ts';
import { readTable, type Table } from './read-table.ts';
import { inRowOrder, type ListLog, type RowTaker, rowTaker } from './row-taker.ts';
import { readLegs, readRod, readSide, readStart } from './run-cells.ts';
import { withRuns } from './with-list.ts';

/** Where a run may begin, and what rod may be bought for a hanger: past these the figure was meant in another unit. */
const PLACE: LengthRange = { min: -2_000 * METRE, max: 2_000 * METRE };
const DROP: LengthRange = { min: 0, max: 50 * METRE };

/**
 * A list of runs, pasted or uploaded, to runs that can be added to the job; or everything that is wrong with it, by row
 * and column. Lengths are read in any form of the project; legs and turns of a run are separated by `;` in their cells.
 */
export function readRuns(text: string, job: JobDocument): ReadList<RunDocument, RunsPreview> {
  const table = readTable<RunColumn>(text, RUN_COLUMNS);
  if ('faults' in table) return { ok: false, faults: table.faults };
  const log: ListLog = { faults: [], questions: [] };
  const rows = table.rows.map((row) => rowTaker(table, row, log));
  const names = namesOf(job, rows);
  judgeDuplicates(rows, job);
  const made = rows.map((row) => ({ row: row.row, run: readRun(row, table, job.project.units, names) }));
  if (log.faults.length > 0) return { ok: false, faults: inRowOrder(log.faults) };
  const runs = made.map(({ run }) => run);
  const faults = judgeMerged(withRuns(job, runs), (path) => placeInList(path, job, made));
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, made: runs, preview: previewRuns(runs), questions: log.questions };
}

interface Names {
  readonly level: (text: string) => Cell<string>;
  readonly type: (text: string) => Cell<string>;
  /** Of the job and of the list: a run may be paired with one that stands below it. */
  readonly run: (text: string) => Cell<string>;
}

function namesOf(job: JobDocument, rows: readonly RowTaker<RunColumn>[]): Names {
  const runs = [...job.runs.map((run) => run.id), ...rows.map((row) => row.text('run'))];
  return {
    level: readKnown('level', new Set(job.levels.map((level) => level.id))),
    type: readKnown('busway type', new Set(job.buswayTypes.map((type) => type.id))),
    run: readKnown('run', new Set(runs)),
  };
}

function judgeDuplicates(rows: readonly RowTaker<RunColumn>[], job: JobDocument): void {
  const inJob = new Set(job.runs.map((run) => run.id));
  const first = new Map<string, number>();
  for (const row of rows) {
    const id = row.text('run');
    const before = first.get(id);
    if (id !== '' && inJob.has(id))
      row.refuse('run', `The job already has run ${id}.`, 'Give it another label, or take the row out.');
    else if (id !== '' && before !== undefined) {
      row.refuse('run', `Run ${id} stands in row ${before} already.`, 'Give it another label, or take one row out.');
    } else first.set(id, row.row);
  }
}

function readRun(row: RowTaker<RunColumn>, table: Table<RunColumn>, units: UnitSystem, names: Names): RunDocument {
  const length = (name: RunColumn, range: LengthRange) =>
    readLengthCell(units, table.columns.get(name)?.unit ?? null, range);
  const id = row.need('run', readText) ?? '';
  const level = row.need('level', names.level) ?? '';
  const area = row.take('area', readText);
  const type = row.need('type', names.type) ?? '';
  const side = row.take('side', readSide);
  const pairedRun = row.take('paired run', names.run);
  const start = readStart(row, (name) => length(name, PLACE));
  const headingDeg = row.take(
    'heading',
    readFigure({ '': 1, deg: 1, '°': 1 }, 'a heading in degrees: 0 is east, 90 is north'),
  );
  const conductorSide = row.need('conductor side', readOneOf(['left', 'right'])) ?? 'left';
  const feed = row.take('feed', readFeed(units)) ?? { kind: 'end' };
  const legs = readLegs(row, length('leg lengths', LEG));
  const dropMm = row.take('drop', length('drop', DROP));
  const rod = row.take('rod', readRod);
  return {
    id,
    level,
    ...(area !== undefined && { area }),
    type,
    ...(side !== undefined && { side }),
    ...(pairedRun !== undefined && { pairedRun }),
    ...(start !== undefined && { start }),
    ...(headingDeg !== undefined && { headingDeg }),
    conductorSide,
    feed,
    legs,
    ...(dropMm !== undefined && { dropMm }),
    ...(rod !== undefined && { rod }),
  };
}

type Made = readonly { readonly row: number; readonly run: RunDocument }[];

/** Which cell a path of the job with the list in it stands for. */
function placeInList(path: string, job: JobDocument, made: Made): Pick<ListFault, 'row' | 'column' | 'value'> {
  const [, index, rest = ''] = /^runs\[(\d+)\]\.?(.*)$/.exec(path) ?? [];
  const row = index === undefined ? undefined : made[Number(index) - job.runs.length];
  const column = COLUMN_OF.find(([prefix]) => rest.startsWith(prefix))?.[1] ?? null;
  return { row: row?.row ?? null, column: row ? column : path, value: '' };
}

const COLUMN_OF: readonly (readonly [string, RunColumn])[] = [
  ['id', 'run'],
  ['area', 'area'],
  ['pairedRun', 'paired run'],
  ['start.xMm', 'x'],
  ['start.yMm', 'y'],
  ['start.zMm', 'z'],
  ['headingDeg', 'heading'],
  ['feed', 'feed'],
  ['legs', 'leg lengths'],
  ['dropMm', 'drop'],
];
