import type { RunEvidence, TypeEvidence } from './evidence.ts';
import type { Gap } from './gap.ts';
import { runGaps } from './run-gaps.ts';

/** What a closeout asks, one row each, in the order of the book. */
export const ROWS = [
  'released',
  'pieces',
  'joints',
  'supports',
  'ends',
  'slot',
  'fire-seals',
  'taps',
  'drops',
  'insulation',
  'instruments',
  'sheets',
] as const;
export type RowId = (typeof ROWS)[number];

export interface ReadinessRow {
  readonly row: RowId;
  readonly required: number;
  readonly present: number;
  /** Whole percent, rounded down so that 100 means all; null where the job asks for none. */
  readonly percent: number | null;
}

export interface Readiness {
  readonly rows: readonly ReadinessRow[];
  /** Every gap: run by run in the order handed in, along each run in the order of the rows, then what belongs to no run. */
  readonly gaps: readonly Gap[];
  readonly required: number;
  readonly present: number;
  readonly percent: number | null;
  readonly runs: number;
}

/**
 * What a closeout asks set against what the record holds, with every gap named: evidence present over evidence required,
 * never pages. Nothing is weighed: a missing joint counts as much as a missing test, and the gaps tell them apart.
 * Source of the questions: the turnover list of the design notes (job-map S24) as far as this edition keeps records.
 *
 * Example: a run of four joints, three of them accepted, has the row `joints` at 3 of 4, 75 %, and one gap.
 */
export function readiness(runs: readonly RunEvidence[], types: readonly TypeEvidence[]): Readiness {
  const asked = runs.map(requiredOf);
  const gaps = [...runs.flatMap(runGaps), ...types.filter((type) => !type.sheetNamed).map(sheetGap)];
  const missing = new Map<RowId, number>();
  for (const gap of gaps) missing.set(gap.row, (missing.get(gap.row) ?? 0) + gap.count);
  const rows = ROWS.map((row) => {
    const required = row === 'sheets' ? types.length : asked.reduce((sum, of) => sum + of[row], 0);
    return rowOf(row, required, missing.get(row) ?? 0);
  });
  const required = rows.reduce((sum, row) => sum + row.required, 0);
  const present = rows.reduce((sum, row) => sum + row.present, 0);
  return { rows, gaps, required, present, percent: percentOf(present, required), runs: runs.length };
}

type RunRow = Exclude<RowId, 'sheets'>;

function requiredOf(run: RunEvidence): Readonly<Record<RunRow, number>> {
  return {
    released: 1,
    pieces: run.pieces.length,
    joints: run.joints.length,
    supports: run.supports.length,
    ends: run.ends.length,
    slot: 1,
    'fire-seals': run.fireSeals.needed,
    taps: run.taps.filter((tap) => tap.state !== 'removed').length,
    drops: run.taps.filter((tap) => tap.state !== 'removed' && tap.dropSupported !== null).length,
    insulation: 1,
    instruments: run.instruments.length,
  };
}

function rowOf(row: RowId, required: number, missing: number): ReadinessRow {
  const present = required - missing;
  return { row, required, present, percent: percentOf(present, required) };
}

function percentOf(present: number, required: number): number | null {
  return required === 0 ? null : Math.floor((100 * present) / required);
}

function sheetGap(type: TypeEvidence): Gap {
  return {
    row: 'sheets',
    run: null,
    runId: null,
    subject: 'type',
    id: type.type,
    mark: type.type,
    reason: 'sheet-not-named',
    count: 1,
  };
}
