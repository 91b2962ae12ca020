import type { RunDocument } from '../document/job-document.ts';
import { toRun } from '../document/model/to-run.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Run } from '../domain/model.ts';
import { openEnds, type RunCard, runCard } from '../domain/quality/end-card.ts';
import type { Verdict } from '../domain/quality/insulation/verdict.ts';
import { type OpenPoint, type RunCounts, type RunStatus, runStatus } from '../domain/quality/run-status.ts';
import { type Boundaries, boundariesOf, lastWorkInBoundary, VOIDS_TESTS } from '../domain/quality/stale.ts';
import { groupBy } from '../domain/takeoff/group-by.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader } from '../store/database.ts';
import { inChunks } from '../store/in-chunks.ts';
import { siteRecord } from '../store/records.ts';
import { type RunScope, readRunCounts, readWholeRunRecords } from '../store/run-counts.ts';
import { draftThings, releasedThings, type Things } from './progress/things.ts';

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
  if (scope === 'all') {
    const rows = await readRunRows(reader, projectId);
    return statesOf(reader, projectId, rows, 'all', design ?? (await readDesignOf(reader, projectId, 'all')));
  }
  const connected = await readBoundaries(reader, projectId, scope);
  const ids = connected.map((row) => row.id);
  const known = design ?? (await readDesignOf(reader, projectId, ids));
  const states = await statesOf(reader, projectId, connected, ids, known);
  return states.filter((state) => scope.includes(state.id));
}

export interface RunRow {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
  readonly changed: boolean;
  readonly parentKey: string | null;
}

const ROW = { id: true, key: true, revision: true, changed: true, parentKey: true } as const;

/** Every run of the job, in document order. */
export function readRunRows(reader: Reader, projectId: string): Promise<RunRow[]> {
  return reader.run.findMany({ where: { projectId }, orderBy: [{ ordinal: 'asc' }, { key: 'asc' }], select: ROW });
}

/** These runs, by their ids, with all that they are electrically connected with, in document order. */
export async function readBoundaries(reader: Reader, projectId: string, ids: readonly string[]): Promise<RunRow[]> {
  const asked = await inChunks(ids, (chunk) =>
    reader.run.findMany({ where: { projectId, id: { in: chunk } }, select: { key: true } }),
  );
  const keys = await connectedRuns(
    reader,
    projectId,
    asked.map(({ key }) => key),
    'tees',
  );
  const rows = await inChunks(keys, (chunk) =>
    reader.run.findMany({ where: { projectId, key: { in: chunk } }, select: { ...ROW, ordinal: true } }),
  );
  return rows.sort((a, b) => a.ordinal - b.ordinal);
}

/** The states of these rows, which are whole boundaries: work on one run makes the test of another stale. */
export async function statesOf(
  reader: Reader,
  projectId: string,
  rows: readonly RunRow[],
  scope: RunScope,
  { runs, layouts }: KnownDesign,
): Promise<RunState[]> {
  const [counts, whole] = await Promise.all([
    readRunCounts(reader, projectId, scope, VOIDS_TESTS),
    readWholeRunRecords(reader, projectId, scope),
  ]);
  const keys = new Map(rows.map((row) => [row.id, row.key]));
  const last = new Map(counts.lastWork.map(({ runId, at }) => [keys.get(runId) ?? '', at.toISOString()]));
  const work = lastWorkInBoundary(last, boundariesIn(rows));
  const pieces = byRun(counts.pieces);
  const joints = byRun(counts.joints);
  const supports = byRun(counts.supports);
  const taps = byRun(counts.taps);
  const drops = byRun(counts.drops);
  const records = byRun(whole.records);
  const tests = byRun(whole.tests);
  return rows.flatMap((row) => {
    const { id, key } = row;
    const run = runs.get(key);
    const layout = layouts.get(key);
    if (run === undefined || (row.revision === 0 && layout === undefined)) return []; // made after the design was read
    const of = { pieces: pieces(id), joints: joints(id), supports: supports(id), taps: taps(id) };
    return [
      stateOf(row, {
        things: row.revision === 0 && layout !== undefined ? draftThings(layout) : releasedThings(of),
        drops: drops(id)[0]?.count ?? 0,
        card: runCard(openEnds(run.feed), records(id).map(siteRecord)),
        test: newest(tests(id)),
        lastWork: work.get(key) ?? null,
      }),
    ];
  });
}

/** What is electrically connected, over any number of tees, by the runs' labels. */
export function boundariesIn(rows: readonly Pick<RunRow, 'key' | 'parentKey'>[]): Boundaries {
  const connections = rows.flatMap((row) => (row.parentKey === null ? [] : [[row.key, row.parentKey] as const]));
  return boundariesOf(
    rows.map((row) => row.key),
    connections,
  );
}

/** A released run needs no layout here: its things are counted. */
async function readDesignOf(reader: Reader, projectId: string, scope: RunScope): Promise<KnownDesign> {
  const where = { projectId, ...(scope === 'all' ? {} : { id: { in: [...scope] } }) };
  const [specs, drafts] = await Promise.all([
    reader.run.findMany({ where, select: { key: true, spec: true } }),
    reader.run.findMany({ where: { ...where, revision: 0 }, select: { key: true, layout: true } }),
  ]);
  return {
    runs: new Map(specs.map(({ key, spec }) => [key, toRun(spec as unknown as RunDocument)])),
    layouts: new Map(drafts.map(({ key, layout }) => [key, layout as unknown as RunLayout])),
  };
}

function byRun<R extends { readonly runId: string }>(rows: readonly R[]): (id: string) => readonly R[] {
  const groups = new Map(groupBy(rows, (row) => row.runId).map((group) => [group[0].runId, group as readonly R[]]));
  return (id) => groups.get(id) ?? [];
}

/** By when it was made; of two made at one moment the one that reached the book later. */
function newest(tests: readonly { readonly at: Date; readonly outcome: string | null }[]): RunCounts['test'] {
  const last = tests.reduce<(typeof tests)[number] | null>(
    (best, test) => (best === null || test.at >= best.at ? test : best),
    null,
  );
  return last === null ? null : { verdict: (last.outcome ?? 'incomplete') as Verdict, at: last.at.toISOString() };
}

type Told = Pick<RunState, 'things' | 'drops' | 'card' | 'test' | 'lastWork'>;

function stateOf({ id, key, revision, changed }: RunRow, told: Told): RunState {
  const { card, things, test, lastWork } = told;
  const closed = card.ends.filter((end) => end.closed !== null).length;
  const ends = { open: card.ends.length - closed, closed };
  const slot = card.slot === null ? ('open' as const) : ('closed' as const);
  return { id, key, revision, changed, ...told, ends, slot, ...runStatus({ ...things, ends, slot, test, lastWork }) };
}
