import type { Similarity } from '../../../src/domain/background/similarity.ts';
import type { PathPoint } from '../../../src/domain/layout/result.ts';
import type { Crossing, Run, RunFeed, Side, UnitSystem } from '../../../src/domain/model.ts';
import type { PieceState } from '../../../src/domain/quality/states.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import type { InkMode } from '../ink.tsx';

export interface PlanRun {
  readonly id: string;
  readonly conductorSide: Side;
  readonly path: readonly PathPoint[];
  /** As far as the record goes; without it the run is drawn as planned. */
  readonly pieces?: readonly { readonly from: Length; readonly to: Length; readonly state: PieceState }[];
  readonly taps?: readonly Length[];
  /** The marks of `taps`, in their order; lettered where there is room. */
  readonly tapMarks?: readonly string[];
  readonly feed?: Pick<RunFeed, 'kind' | 'at'>;
  /** What the run passes through. */
  readonly crossings?: readonly Pick<Crossing, 'at' | 'thickness' | 'kind'>[];
  /** Where hangers can be fixed: lines of the structure across the run. */
  readonly structure?: Run['structure'];
  readonly href?: string;
}

/** A part of the level, in its own coordinates. */
export interface Window {
  readonly left: Length;
  readonly right: Length;
  readonly low: Length;
  readonly high: Length;
}

/** A picture that lies under the plan, for orientation alone. */
export interface Underlay {
  readonly href: string;
  /** In its own pixels. */
  readonly width: number;
  readonly height: number;
  readonly placed: Similarity;
  /** How much of its ink is shown, 0 to 1; on paper the picture itself is pale. */
  readonly strength: number;
}

export interface FloorPlanProps {
  readonly level: string;
  readonly runs: readonly PlanRun[];
  readonly units: UnitSystem;
  readonly ink: InkMode;
  readonly width?: number;
  /** The plan is made smaller rather than taller than this. */
  readonly tallest?: number;
  /** Only this part, drawn as large as it goes. */
  readonly window?: Window;
  /** Marks of tap-offs and lines of the structure; a small plan leaves them out. */
  readonly detailed?: boolean;
  readonly underlay?: Underlay;
}
