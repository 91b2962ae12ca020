import type { Run } from '../model.ts';
import { type Instant, isAfter, latest } from './instant.ts';
import type { RecordKind } from './record.ts';

/** Two runs that are joined by a tee or another connection that a test cannot see past. */
export type Connection = readonly [string, string];

/** The runs of each electrical boundary: everything connected, over any number of tees. A run alone is its own boundary. */
export type Boundaries = ReadonlyMap<string, readonly string[]>;

/** Connections of the design: a run fed by a tee and its parent. Feeders are lifted for a test and connect nothing. */
export function connectionsOf(
  runs: readonly { readonly id: string; readonly feed: Pick<Run['feed'], 'kind' | 'fromRun'> }[],
): readonly Connection[] {
  return runs.flatMap(({ id, feed }) =>
    feed.kind === 'tee' && feed.fromRun !== null ? [[id, feed.fromRun] as const] : [],
  );
}

/** Groups the runs by what is connected, each group in the order of `runs`. Time grows with runs + connections. */
export function boundariesOf(runs: readonly string[], connections: readonly Connection[]): Boundaries {
  const beside = new Map<string, string[]>(runs.map((run) => [run, []]));
  for (const [a, b] of connections) {
    beside.get(a)?.push(b);
    beside.get(b)?.push(a);
  }
  const order = new Map(runs.map((run, index) => [run, index]));
  const groups = new Map<string, readonly string[]>();
  for (const run of runs) {
    if (groups.has(run)) continue;
    const group = reached(run, beside).sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
    for (const member of group) groups.set(member, group);
  }
  return groups;
}

function reached(start: string, beside: ReadonlyMap<string, readonly string[]>): string[] {
  const seen = new Set([start]);
  for (const run of seen) for (const next of beside.get(run) ?? []) if (beside.has(next)) seen.add(next);
  return [...seen];
}

/** Kinds of record that touch what an insulation test measured. Acceptance, labels and drop supports do not. */
export const VOIDS_TESTS = [
  'piece-hung',
  'piece-quarantined',
  'joint-step',
  'joint-reopened',
  'tap-set',
  'end-closed',
  'end-opened',
  'slot-closed',
  'slot-opened',
] as const satisfies readonly RecordKind[];

export interface Work {
  readonly run: string;
  readonly kind: RecordKind;
  readonly at: Instant;
  /** The place by its mark, "F1-R1-A-J03". */
  readonly mark: string;
}

/**
 * The work that makes a test stale: everything done in its run's boundary at or after the test, oldest first; none leaves it
 * current. Work at the very moment of the test counts, because the record cannot say which came first.
 *
 * Example: tested at 14:00, a joint of the tee's branch reopened at 15:10: stale.
 */
export function staleBecause(
  test: { readonly run: string; readonly at: Instant },
  work: readonly Work[],
  boundaries: Boundaries,
): readonly Work[] {
  const inside = new Set(boundaries.get(test.run) ?? [test.run]);
  return work
    .filter(({ run, kind, at }) => inside.has(run) && voids(kind) && !isAfter(test.at, at))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

export function voids(kind: RecordKind): boolean {
  return (VOIDS_TESTS as readonly RecordKind[]).includes(kind);
}

/**
 * The last voiding work of each run's boundary, from the last of each run alone: what a page of thousands of runs compares
 * its tests with, without reading any record.
 */
export function lastWorkInBoundary(
  lastWork: ReadonlyMap<string, Instant>,
  boundaries: Boundaries,
): ReadonlyMap<string, Instant | null> {
  const found = new Map<string, Instant | null>();
  for (const group of new Set(boundaries.values())) {
    const last = group.reduce<Instant | null>((best, run) => latest(best, lastWork.get(run) ?? null), null);
    for (const run of group) found.set(run, last);
  }
  return found;
}

/** True when the boundary's last work does not lie before the test. */
export function isStale(testAt: Instant, lastWork: Instant | null): boolean {
  return lastWork !== null && !isAfter(testAt, lastWork);
}
