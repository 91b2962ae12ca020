import type { Instant } from './instant.ts';
import type { Verdict } from './insulation/verdict.ts';
import { isStale } from './stale.ts';
import { isHung, type JointState, type PieceState, type SupportState } from './states.ts';

/**
 * How far a run is, computed and never typed. Nothing after `tested` is told here: whether a run may be energised is for the
 * gate and for qualified people, and this status permits nothing.
 */
export const RUN_STATUSES = ['planned', 'in-installation', 'mechanically-complete', 'tested'] as const;
export type RunStatus = (typeof RUN_STATUSES)[number];

/** How many of a run's things stand in each state; a state that no thing is in may be absent. */
export type Counts<State extends string> = Readonly<Partial<Record<State, number>>>;

/** Grouped counts of one run, so that a page of thousands reads no single joint. */
export interface RunCounts {
  readonly pieces: Counts<PieceState>;
  readonly joints: Counts<JointState>;
  readonly supports: Counts<SupportState>;
  readonly ends: { readonly open: number; readonly closed: number };
  readonly slot: 'open' | 'closed';
  /** The newest standing insulation test, whatever its verdict; null when there is none. */
  readonly test: { readonly verdict: Verdict; readonly at: Instant } | null;
  /** The last voiding work in the run's boundary (`lastWorkInBoundary`). */
  readonly lastWork: Instant | null;
}

/** What is still to do for the next status: `count` of `of`. */
export interface OpenPoint {
  readonly code:
    | 'layout-missing'
    | 'pieces-not-hung'
    | 'pieces-quarantined'
    | 'joints-not-accepted'
    | 'joints-reopened'
    | 'supports-not-set'
    | 'ends-open'
    | 'slot-open'
    | 'test-missing'
    | 'test-not-passed'
    | 'test-stale';
  readonly count: number;
  readonly of: number;
  readonly detail: string | null;
}

/** The status of one run with what bars the next one. Supports count when set; a joint only when accepted. */
export function runStatus(counts: RunCounts): { readonly status: RunStatus; readonly open: readonly OpenPoint[] } {
  const build = buildPoints(counts);
  if (build.length === 0) {
    const tests = testPoints(counts);
    return { status: tests.length === 0 ? 'tested' : 'mechanically-complete', open: tests };
  }
  return { status: begun(counts) ? 'in-installation' : 'planned', open: build };
}

/** Material on the floor is not yet installation. */
function begun({ pieces, joints, supports, ends, slot }: RunCounts): boolean {
  const hung = sum(pieces, isHung) > 0;
  const made = sum(joints) > (joints.open ?? 0);
  const set = sum(supports) > (supports.planned ?? 0);
  return hung || made || set || ends.closed > 0 || slot === 'closed';
}

function buildPoints({ pieces, joints, supports, ends, slot }: RunCounts): OpenPoint[] {
  const of = { pieces: sum(pieces), joints: sum(joints), supports: sum(supports), ends: ends.open + ends.closed };
  if (of.pieces === 0) return [{ code: 'layout-missing', count: 1, of: 1, detail: null }];
  const hung = sum(pieces, isHung);
  const quarantined = pieces.quarantined ?? 0;
  const reopened = joints.reopened ?? 0;
  return [
    point('pieces-quarantined', quarantined, of.pieces),
    point('pieces-not-hung', of.pieces - hung - quarantined, of.pieces),
    point('supports-not-set', supports.planned ?? 0, of.supports),
    point('joints-reopened', reopened, of.joints),
    point('joints-not-accepted', of.joints - (joints.accepted ?? 0) - reopened, of.joints),
    point('ends-open', ends.open, of.ends),
    point('slot-open', slot === 'open' ? 1 : 0, 1),
  ].filter(({ count }) => count > 0);
}

function testPoints({ test, lastWork }: RunCounts): OpenPoint[] {
  if (test === null) return [point('test-missing', 1, 1)];
  if (test.verdict !== 'pass') return [point('test-not-passed', 1, 1, test.verdict)];
  return isStale(test.at, lastWork) ? [point('test-stale', 1, 1, lastWork)] : [];
}

function point(code: OpenPoint['code'], count: number, of: number, detail: string | null = null): OpenPoint {
  return { code, count, of, detail };
}

function sum<State extends string>(counts: Counts<State>, wanted: (state: string) => boolean = () => true): number {
  return Object.entries<number | undefined>(counts).reduce(
    (total, [state, count]) => (wanted(state) ? total + (count ?? 0) : total),
    0,
  );
}
