import type { Activity } from '../domain/labour/result.ts';
import type { PlacedPiece, RunLayout } from '../domain/layout/result.ts';
import type { Run } from '../domain/model.ts';
import type { BudgetLine, EarnedSum } from '../domain/progress/earned.ts';
import { earned } from '../domain/progress/earned.ts';
import { type RunProgress, stateCounts } from '../domain/progress/state-counts.ts';
import { openEnds, type RunCard, runCard } from '../domain/quality/end-card.ts';
import type { Verdict } from '../domain/quality/insulation/verdict.ts';
import {
  type Counts,
  type OpenPoint,
  type RunCounts,
  type RunStatus,
  runStatus,
} from '../domain/quality/run-status.ts';
import { boundariesOf, isStale, lastWorkInBoundary, VOIDS_TESTS } from '../domain/quality/stale.ts';
import {
  isHung,
  type JointState,
  type PieceState,
  type SupportState,
  type TapState,
} from '../domain/quality/states.ts';
import { groupBy } from '../domain/takeoff/group-by.ts';
import { linesByRun } from '../domain/takeoff/lines-by-run.ts';
import type { Length } from '../domain/units/length.ts';
import type { Reader } from '../store/database.ts';
import { type PieceRow, readRunCounts, readWholeRunRecords, type StateRow } from '../store/run-counts.ts';
import { siteRecord } from './closeout/site-records.ts';
import { figuresOf, type JobFigures } from './figures.ts';
import { bars } from './releases.ts';

/** How far one run is, and what is in the way. */
export interface RunStanding {
  readonly id: string;
  readonly key: string;
  readonly level: string;
  readonly area: string | null;
  readonly side: string | null;
  readonly length: Length;
  /** 0 until the run is released. */
  readonly revision: number;
  /** The design has moved on since the last release. */
  readonly changed: boolean;
  readonly status: RunStatus;
  readonly open: readonly OpenPoint[];
  readonly planned: Tally;
  /** Pieces hung, joints accepted, hangers set, tap-offs checked. */
  readonly done: Tally;
  /** null without a labour book or a sound layout. */
  readonly hours: EarnedSum | null;
  /** What keeps the design, as it stands, from the floor. */
  readonly bars: readonly string[];
}

export interface Tally {
  readonly pieces: number;
  readonly joints: number;
  readonly supports: number;
  readonly taps: number;
}

export interface JobProgress {
  readonly figures: JobFigures;
  /** In document order. */
  readonly runs: readonly RunStanding[];
}

const KEPT = 4;
/** Whatever changes a job appends to its audit chain, so the progress of its last few readings is kept by each process. */
const kept = new Map<string, Promise<JobProgress>>();

/** How far every run of a job is. The caller has asked who is reading. */
export async function progressOf(reader: Reader, projectId: string): Promise<JobProgress> {
  const last = await reader.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { seq: true, hash: true },
  });
  const key = `${projectId}@${last?.seq ?? 0} ${last?.hash ?? ''}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const reading = readProgress(reader, projectId);
  kept.set(key, reading);
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
  reading.catch(() => kept.delete(key));
  return reading;
}

async function readProgress(reader: Reader, projectId: string): Promise<JobProgress> {
  const [figures, rows, counts, whole] = await Promise.all([
    figuresOf(reader, projectId),
    reader.run.findMany({
      where: { projectId },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      select: { id: true, key: true, revision: true, changed: true, parentKey: true },
    }),
    readRunCounts(reader, projectId, 'all', VOIDS_TESTS),
    readWholeRunRecords(reader, projectId, 'all'),
  ]);
  const drafts = new Map(figures.figures.layouts.map((layout) => [layout.run, layout]));
  const runs = new Map(figures.job.runs.map((run) => [run.id, run]));
  const budget = linesByRun(figures.figures.labour?.lines ?? []);
  const work = workOf(rows, counts.lastWork);
  const of = <R extends { readonly runId: string }>(all: readonly R[]) =>
    new Map(groupBy(all, (row) => row.runId).map((group) => [group[0].runId, group as readonly R[]]));
  const found = {
    pieces: of(counts.pieces),
    joints: of(counts.joints),
    supports: of(counts.supports),
    taps: of(counts.taps),
    drops: of(counts.drops),
    records: of(whole.records),
    tests: of(whole.tests),
  };
  const standings = rows.flatMap((row) => {
    const run = runs.get(row.key);
    const layout = drafts.get(row.key);
    if (run === undefined || layout === undefined) return []; // made after the design was read: the next reading has it
    const things = row.revision === 0 ? draftThings(layout) : releasedThings(row.id, found);
    const card = runCard(openEnds(run.feed), (found.records.get(row.id) ?? []).map(siteRecord));
    const test = newest(found.tests.get(row.id) ?? []);
    const lastWork = work.get(row.key) ?? null;
    const drops = found.drops.get(row.id)?.[0]?.count ?? 0;
    return [standingOf({ row, run, layout, things, card, test, lastWork, drops, budget: budget.get(row.key) ?? [] })];
  });
  return { figures, runs: standings };
}

interface Row {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
  readonly changed: boolean;
  readonly parentKey: string | null;
}

/** The last work of each run's boundary, by the run's label. */
function workOf(rows: readonly Row[], lastWork: readonly { readonly runId: string; readonly at: Date }[]) {
  const keys = new Map(rows.map((row) => [row.id, row.key]));
  const connections = rows.flatMap((row) => (row.parentKey === null ? [] : [[row.key, row.parentKey] as const]));
  const last = new Map(lastWork.map(({ runId, at }) => [keys.get(runId) ?? '', at.toISOString()]));
  return lastWorkInBoundary(last, boundariesOf([...keys.values()], connections));
}

interface Test {
  readonly verdict: Verdict;
  readonly at: string;
}

/** By when it was made; of two made at one moment the one that reached the book later. */
function newest(tests: readonly { readonly at: Date; readonly outcome: string | null }[]): Test | null {
  const last = tests.reduce<(typeof tests)[number] | null>(
    (best, test) => (best === null || test.at >= best.at ? test : best),
    null,
  );
  return last === null ? null : { verdict: (last.outcome ?? 'incomplete') as Verdict, at: last.at.toISOString() };
}

interface Things extends Pick<RunCounts, 'pieces' | 'joints' | 'supports'> {
  readonly taps: Counts<TapState>;
  readonly byLength: RunProgress['pieces'];
}

/** What a run that was never released would need: all of it is still planned. */
function draftThings(layout: RunLayout): Things {
  return {
    pieces: { planned: layout.pieces.length },
    joints: { open: layout.joints.length },
    supports: { planned: layout.supports.length },
    taps: { planned: layout.taps.length },
    byLength: layout.pieces.map(({ kind, from, to }) => ({ kind, length: to - from, state: 'planned', count: 1 })),
  };
}

function releasedThings(
  runId: string,
  found: {
    readonly pieces: ReadonlyMap<string, readonly PieceRow[]>;
    readonly joints: ReadonlyMap<string, readonly StateRow[]>;
    readonly supports: ReadonlyMap<string, readonly StateRow[]>;
    readonly taps: ReadonlyMap<string, readonly StateRow[]>;
  },
): Things {
  const pieces = found.pieces.get(runId) ?? [];
  return {
    pieces: countsOf<PieceState>(pieces),
    joints: countsOf<JointState>(found.joints.get(runId)),
    supports: countsOf<SupportState>(found.supports.get(runId)),
    taps: countsOf<TapState>(found.taps.get(runId)),
    byLength: pieces.map(({ kind, length, state, count }) => ({
      kind: kind as PlacedPiece['kind'],
      length,
      state: state as PieceState,
      count,
    })),
  };
}

function countsOf<State extends string>(rows: readonly StateRow[] = []): Counts<State> {
  const counts: Partial<Record<string, number>> = {};
  for (const { state, count } of rows) counts[state] = (counts[state] ?? 0) + count;
  return counts as Counts<State>;
}

interface Found {
  readonly row: Row;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly things: Things;
  readonly card: RunCard;
  readonly test: Test | null;
  readonly lastWork: string | null;
  readonly drops: number;
  readonly budget: readonly BudgetLine[];
}

function standingOf(found: Found): RunStanding {
  const { row, run, layout, things, card, test, lastWork } = found;
  const closed = card.ends.filter((end) => end.closed !== null).length;
  const ends = { open: card.ends.length - closed, closed };
  const slot = card.slot === null ? ('open' as const) : ('closed' as const);
  const { status, open } = runStatus({ ...things, ends, slot, test, lastWork });
  const { pieces, joints, supports, taps } = things;
  return {
    id: row.id,
    key: row.key,
    level: run.level,
    area: run.area,
    side: run.side,
    length: layout.length,
    revision: row.revision,
    changed: row.changed,
    status,
    open,
    planned: { pieces: sum(pieces), joints: sum(joints), supports: sum(supports), taps: sum(taps, isThere) },
    done: {
      pieces: sum(pieces, isHung),
      joints: joints.accepted ?? 0,
      supports: sum(supports, (state) => state !== 'planned'),
      taps: (taps.checked ?? 0) + (taps['in-service'] ?? 0),
    },
    hours: found.budget.length === 0 ? null : earnedOf(found, ends, slot),
    bars: bars(layout.findings),
  };
}

function earnedOf(found: Found, ends: RunProgress['ends'], slot: RunProgress['slot']): EarnedSum {
  const { run, things, card, test, lastWork, budget, drops } = found;
  const budgetPieces = new Map<Activity, number>();
  for (const { activity, pieces } of budget)
    if (activity !== 'extra') budgetPieces.set(activity, (budgetPieces.get(activity) ?? 0) + pieces);
  const isTested = test?.verdict === 'pass' && !isStale(test.at, lastWork);
  const counts = stateCounts({
    run: run.id,
    pieces: things.byLength,
    joints: things.joints,
    supports: things.supports,
    taps: things.taps,
    drops: { supported: drops, of: Math.max(drops, budgetPieces.get('drop') ?? 0) },
    ends,
    slot,
    insulationTest: isTested ? 'done' : 'open',
    reported: card.reported,
    budgetPieces,
  });
  return earned(budget, counts).total;
}

function isThere(state: string): boolean {
  return state !== 'removed';
}

function sum(counts: Counts<string>, wanted: (state: string) => boolean = () => true): number {
  return Object.entries(counts).reduce((total, [state, count]) => (wanted(state) ? total + (count ?? 0) : total), 0);
}
