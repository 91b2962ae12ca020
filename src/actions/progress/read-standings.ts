import { openEnds, runCard } from '../../domain/quality/end-card.ts';
import type { Verdict } from '../../domain/quality/insulation/verdict.ts';
import { boundariesOf, lastWorkInBoundary, VOIDS_TESTS } from '../../domain/quality/stale.ts';
import { groupBy } from '../../domain/takeoff/group-by.ts';
import { linesByRun } from '../../domain/takeoff/lines-by-run.ts';
import type { Reader } from '../../store/database.ts';
import { type RunScope, readRunCounts, readWholeRunRecords } from '../../store/run-counts.ts';
import { siteRecord } from '../closeout/site-records.ts';
import type { JobFigures } from '../figures.ts';
import type { RunStanding } from './standing.ts';
import { type FoundRun, standingOf } from './standing-of.ts';
import { draftThings, releasedThings } from './things.ts';

export interface RunRow {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
  readonly changed: boolean;
  readonly parentKey: string | null;
}

/** In document order. */
export function readRunRows(reader: Reader, projectId: string): Promise<RunRow[]> {
  return reader.run.findMany({
    where: { projectId },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true, revision: true, changed: true, parentKey: true },
  });
}

/** How far these runs are; `rows` are whole boundaries, since work on one run makes the test of another stale. */
export async function readStandings(
  reader: Reader,
  projectId: string,
  { figures, job }: JobFigures,
  rows: readonly RunRow[],
  scope: RunScope,
): Promise<RunStanding[]> {
  const [counts, whole] = await Promise.all([
    readRunCounts(reader, projectId, scope, VOIDS_TESTS),
    readWholeRunRecords(reader, projectId, scope),
  ]);
  const runs = new Map(job.runs.map((run) => [run.id, run]));
  const layouts = new Map(figures.layouts.map((layout) => [layout.run, layout]));
  const budget = linesByRun(figures.labour?.lines ?? []);
  const work = workOf(rows, counts.lastWork);
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
    if (run === undefined || layout === undefined) return []; // made after the design was read: the next reading has it
    const of = { pieces: pieces(id), joints: joints(id), supports: supports(id), taps: taps(id) };
    return [
      standingOf({
        row,
        run,
        layout,
        things: row.revision === 0 ? draftThings(layout) : releasedThings(of),
        card: runCard(openEnds(run.feed), records(id).map(siteRecord)),
        test: newest(tests(id)),
        lastWork: work.get(key) ?? null,
        drops: drops(id)[0]?.count ?? 0,
        budget: budget.get(key) ?? [],
      }),
    ];
  });
}

function byRun<R extends { readonly runId: string }>(rows: readonly R[]): (id: string) => readonly R[] {
  const groups = new Map(groupBy(rows, (row) => row.runId).map((group) => [group[0].runId, group as readonly R[]]));
  return (id) => groups.get(id) ?? [];
}

/** The last work of each run's boundary, by the run's label. */
function workOf(rows: readonly RunRow[], lastWork: readonly { readonly runId: string; readonly at: Date }[]) {
  const keys = new Map(rows.map((row) => [row.id, row.key]));
  const connections = rows.flatMap((row) => (row.parentKey === null ? [] : [[row.key, row.parentKey] as const]));
  const last = new Map(lastWork.map(({ runId, at }) => [keys.get(runId) ?? '', at.toISOString()]));
  return lastWorkInBoundary(last, boundariesOf([...keys.values()], connections));
}

/** By when it was made; of two made at one moment the one that reached the book later. */
function newest(tests: readonly { readonly at: Date; readonly outcome: string | null }[]): FoundRun['test'] {
  const last = tests.reduce<(typeof tests)[number] | null>(
    (best, test) => (best === null || test.at >= best.at ? test : best),
    null,
  );
  return last === null ? null : { verdict: (last.outcome ?? 'incomplete') as Verdict, at: last.at.toISOString() };
}
