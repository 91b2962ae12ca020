import type { EarnedSum } from '../../domain/progress/earned.ts';
import type { OpenPoint, RunStatus } from '../../domain/quality/run-status.ts';
import type { Length } from '../../domain/units/length.ts';

/** How many of a run's things, or how many of them are done. */
export interface Tally {
  readonly pieces: number;
  readonly joints: number;
  readonly supports: number;
  readonly taps: number;
}

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
  /** What keeps the design, as it stands, from the floor; stops first. */
  readonly bars: readonly string[];
}
