import type { RunEnd } from '../quality/record.ts';
import type { JointState, PieceState, SupportState, TapState } from '../quality/states.ts';

/** One thing of a run with how far it is. `id` is permanent, `mark` is what people call it. */
export interface Evidence<State extends string> {
  readonly id: string;
  readonly mark: string;
  readonly state: State;
}

/** How a run's insulation stands: by its newest test that counts, and by the work done since anywhere it is connected to. */
export type InsulationStanding =
  | { readonly kind: 'passing' }
  | { readonly kind: 'missing' }
  | { readonly kind: 'failed' }
  | { readonly kind: 'incomplete' }
  | { readonly kind: 'information-only' }
  | { readonly kind: 'stale' };

/** What the record holds of one run. Lists are those of the released run, without what was retired. */
export interface RunEvidence {
  /** The run's label, and its permanent id for links. */
  readonly run: string;
  readonly runId: string;
  /** 0 while nothing was released. */
  readonly revision: number;
  /** The design has moved on since the release: what was built is not what is drawn. */
  readonly changed: boolean;
  readonly pieces: readonly Evidence<PieceState>[];
  readonly joints: readonly Evidence<JointState>[];
  readonly supports: readonly Evidence<SupportState>[];
  readonly taps: readonly (Evidence<TapState> & {
    /** null: the tap-off has no drop, and none is asked for. */
    readonly dropSupported: boolean | null;
  })[];
  /** The ends that need a cap. */
  readonly ends: readonly { readonly end: RunEnd; readonly closed: boolean }[];
  readonly slotClosed: boolean;
  readonly fireSeals: { readonly needed: number; readonly reported: number };
  readonly insulation: InsulationStanding;
  /** Instruments of the run's standing tests. */
  readonly instruments: readonly {
    readonly id: string;
    readonly calibrationDue: string | null;
    readonly testId: string;
  }[];
}

/** A busway type that a run uses, and whether the job names the sheet its figures came from. */
export interface TypeEvidence {
  readonly type: string;
  readonly sheetNamed: boolean;
}
