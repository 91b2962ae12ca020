import type { Run, Zone } from '../model.ts';
import type { Length } from '../units/length.ts';

/** What a hanger's place is measured against: limits of the sheet (null is unknown) and what stands along the run. */
export interface SupportSurroundings {
  /** Where its stretch begins: 0 (or absent), or past a riser, which has supports of its own. */
  readonly stretchStart?: Length;
  /** Where its stretch ends: the length of the run, or short of a riser. */
  readonly runLength: Length;
  /** Where the layout puts this hanger. */
  readonly planned: Length;
  /** All other hangers, as measured where they are set and else as planned. */
  readonly others: readonly Length[];
  readonly joints: readonly Length[];
  readonly fittings: readonly Zone[];
  /** Faces of walls and floors. */
  readonly crossings: readonly Zone[];
  readonly noSupport: readonly Zone[];
  readonly structure: Run['structure'];
  readonly limits: {
    readonly maxSpacing: Length | null;
    readonly maxEndOverhang: Length | null;
    readonly jointClear: Length | null;
    readonly fittingWithin: Length | null;
    readonly crossingClear: Length | null;
  };
}

/** A stretch where the hanger may stand, both ends in: a distance equal to a limit passes. */
export interface Window {
  readonly from: Length;
  readonly to: Length;
}
