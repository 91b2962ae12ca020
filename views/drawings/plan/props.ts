import type { PathPoint } from '../../../src/domain/layout/result.ts';
import type { Side, UnitSystem } from '../../../src/domain/model.ts';
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
  readonly href?: string;
}

export interface FloorPlanProps {
  readonly level: string;
  readonly runs: readonly PlanRun[];
  readonly units: UnitSystem;
  readonly ink: InkMode;
  readonly width?: number;
  /** The plan is made smaller rather than taller than this. */
  readonly tallest?: number;
}
