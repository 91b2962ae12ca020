import type { RunDocument } from '../document/job-document.ts';
import { toRun } from '../document/model/to-run.ts';
import type { PlacedPiece, RunLayout } from '../domain/layout/result.ts';
import type { Run } from '../domain/model.ts';
import type { RunProgress } from '../domain/progress/state-counts.ts';
import { openEnds, type RunCard, runCard } from '../domain/quality/end-card.ts';
import type { Verdict } from '../domain/quality/insulation/verdict.ts';
import {
  type Counts,
  type OpenPoint,
  type RunCounts,
  type RunStatus,
  runStatus,
} from '../domain/quality/run-status.ts';
import { type Boundaries, boundariesOf, lastWorkInBoundary, VOIDS_TESTS } from '../domain/quality/stale.ts';
import type { JointState, PieceState, SupportState, TapState } from '../domain/quality/states.ts';
import { groupBy } from '../domain/takeoff/group-by.ts';
import type { Reader } from '../store/database.ts';
import { siteRecord } from '../store/records.ts';
import {
  type PieceRow,
  type RunScope,
  readRunCounts,
  readWholeRunRecords,
  type StateRow,
} from '../store/run-counts.ts';

/** How far one run is, by its records alone: what the pages of a job, the cards and the API all say of it. */
export interface RunState {
  readonly id: string;
  readonly key: string;
  /** 0 until the run is released. */
  readonly revision: number;
  /** The design has moved on since the last release. */
  readonly changed: boolean;
  readonly things: Things;
  /** Tap-offs whose drop has its first support recorded. */
  readonly drops: number;
  readonly card: RunCard;
  readonly ends: { readonly open: number; readonly closed: number };
  readonly slot: 'open' | 'closed';
  /** The newest standing insulation test. */
  readonly test: RunCounts['test'];
  /** The last work in everything that it is electrically connected with. */
  readonly lastWork: string | null;
  readonly status: RunStatus;
  readonly open: readonly OpenPoint[];
}

export interface Things extends Pick<RunCounts, 'pieces' | 'joints' | 'supports'> {
  readonly taps: Counts<TapState>;
  readonly byLength: RunProgress['pieces'];
}

/** The design, for callers that have read it already. By the run's label. */
export interface KnownDesign {
  readonly runs: ReadonlyMap<string, Run>;
  readonly layouts: ReadonlyMap<string, RunLayout>;
}

/**
 * Status and counts of runs in document order, all of a job or those with these ids. Grouped by the database: a job of
 * thousands of runs takes as many questions as one of ten, and reads no single joint.
 */
export async function runStates(
  reader: Reader,
  projectId: string,
  scope: RunScope = 'all',
  design?: KnownDesign,
): Promise<readonly RunState[]> {
  const rows = await reader.run.findMany({
    where: { projectId },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true, revision: true, changed: true, parentKey: true },
  });
  const asked = scope === 'all' ? rows : rows.filter((row) => scope.includes(row.id));
  const boundaries = boundariesIn(rows);
  const connected = scope === 'all' ? 'all' : idsConnected(rows, asked, boundaries);
  const [counts, whole, known] = await Promise.all([
    readRunCounts(reader, projectId, connected, VOIDS_TESTS),
    readWholeRunRecords(reader, projectId, scope),
    design ?? readDesignOf(reader, asked),
  ]);
  const keys = new Map(rows.map((row) => [row.id, row.key]));
  const last = new Map(counts.lastWork.map(({ runId, at }) => [keys.get(runId) ?? '', at.toISOString()]));
  const work = lastWorkInBoundary(last, boundaries);
  const found = {
    pieces: byRun(counts.pieces),
    joints: byRun(counts.joints),
    supports: byRun(counts.supports),
    taps: byRun(counts.taps),
    drops: byRun(counts.drops),
    records: byRun(whole.records),
    tests: byRun(whole.tests),
  };
  return asked.flatMap((row) => {
    const run = known.runs.get(row.key);
    const layout = known.layouts.get(row.key);
    if (run === undefined || (row.revision === 0 && layout === undefined)) return []; // made after the design was read
    const things = row.revision === 0 && layout !== undefined ? draftThings(layout) : releasedThings(row.id, found);
    const card = runCard(openEnds(run.feed), (found.records.get(row.id) ?? []).map(siteRecord));
    const test = newest(found.tests.get(row.id) ?? []);
    const drops = found.drops.get(row.id)?.[0]?.count ?? 0;
    return [stateOf(row, { things, drops, card, test, lastWork: work.get(row.key) ?? null })];
  });
}

interface Row {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
  readonly changed: boolean;
  readonly parentKey: string | null;
}

/** What is electrically connected, over any number of tees, by the runs' labels. */
export function boundariesIn(rows: readonly Pick<Row, 'key' | 'parentKey'>[]): Boundaries {
  const connections = rows.flatMap((row) => (row.parentKey === null ? [] : [[row.key, row.parentKey] as const]));
  return boundariesOf(
    rows.map((row) => row.key),
    connections,
  );
}

function idsConnected(rows: readonly Row[], asked: readonly Row[], boundaries: Boundaries): string[] {
  const wanted = new Set(asked.flatMap((row) => boundaries.get(row.key) ?? [row.key]));
  return rows.filter((row) => wanted.has(row.key)).map((row) => row.id);
}

/** A released run needs no layout here: its things are counted. */
async function readDesignOf(reader: Reader, rows: readonly Row[]): Promise<KnownDesign> {
  const ids = (wanted: readonly Row[]) => ({ id: { in: wanted.map((row) => row.id) } });
  const [specs, drafts] = await Promise.all([
    reader.run.findMany({ where: ids(rows), select: { key: true, spec: true } }),
    reader.run.findMany({
      where: ids(rows.filter((row) => row.revision === 0)),
      select: { key: true, layout: true },
    }),
  ]);
  return {
    runs: new Map(specs.map(({ key, spec }) => [key, toRun(spec as unknown as RunDocument)])),
    layouts: new Map(drafts.map(({ key, layout }) => [key, layout as unknown as RunLayout])),
  };
}

function byRun<R extends { readonly runId: string }>(all: readonly R[]): ReadonlyMap<string, readonly R[]> {
  return new Map(groupBy(all, (row) => row.runId).map((group) => [group[0].runId, group as readonly R[]]));
}

/** By when it was made; of two made at one moment the one that reached the book later. */
function newest(tests: readonly { readonly at: Date; readonly outcome: string | null }[]): RunCounts['test'] {
  const last = tests.reduce<(typeof tests)[number] | null>(
    (best, test) => (best === null || test.at >= best.at ? test : best),
    null,
  );
  return last === null ? null : { verdict: (last.outcome ?? 'incomplete') as Verdict, at: last.at.toISOString() };
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

interface Found {
  readonly pieces: ReadonlyMap<string, readonly PieceRow[]>;
  readonly joints: ReadonlyMap<string, readonly StateRow[]>;
  readonly supports: ReadonlyMap<string, readonly StateRow[]>;
  readonly taps: ReadonlyMap<string, readonly StateRow[]>;
}

function releasedThings(runId: string, found: Found): Things {
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

type Told = Pick<RunState, 'things' | 'drops' | 'card' | 'test' | 'lastWork'>;

function stateOf({ id, key, revision, changed }: Row, told: Told): RunState {
  const { card, things, test, lastWork } = told;
  const closed = card.ends.filter((end) => end.closed !== null).length;
  const ends = { open: card.ends.length - closed, closed };
  const slot = card.slot === null ? ('open' as const) : ('closed' as const);
  return { id, key, revision, changed, ...told, ends, slot, ...runStatus({ ...things, ends, slot, test, lastWork }) };
}
