import type { RowId } from './readiness.ts';

/** Why a piece of evidence does not count, or is not there. */
export type GapReason =
  | 'not-released'
  | 'changed-since-release'
  | 'quarantined'
  | 'not-hung'
  | 'joints-open'
  | 'not-accepted'
  | 'reopened'
  | 'not-set'
  | 'end-open'
  | 'slot-open'
  | 'not-sealed'
  | 'not-checked'
  | 'drop-not-supported'
  | 'test-missing'
  | 'test-failed'
  | 'test-incomplete'
  | 'test-information-only'
  | 'test-stale'
  | 'calibration-unknown'
  | 'sheet-not-named';

/** One thing that a closeout asks for and the record does not hold, where it is and why. */
export interface Gap {
  readonly row: RowId;
  readonly run: string | null;
  readonly runId: string | null;
  readonly subject: 'run' | 'piece' | 'joint' | 'support' | 'tap' | 'test' | 'type';
  readonly id: string;
  readonly mark: string;
  readonly reason: GapReason;
  /** Pieces of evidence missing: 1, but for seals that are counted and not named. */
  readonly count: number;
}
