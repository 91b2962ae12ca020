import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Run, UnitSystem } from '../../../src/domain/model.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../../src/domain/quality/states.ts';
import type { InkMode } from '../ink.tsx';
import type { Ink } from '../states.ts';

/** What the record says about one thing of the run. `fault` draws it cross-hatched, whatever its state. */
export interface StripItem<State> {
  readonly mark: string;
  readonly state: State;
  readonly href?: string;
  readonly fault?: string;
  /** What a revision does to it, instead of its state. */
  readonly change?: { readonly ink: Ink; readonly word: string };
}

/** The record of a run, in the order of the layout's lists; taps by their id. What is absent is drawn as planned. */
export interface StripRecord {
  readonly pieces?: readonly StripItem<PieceState>[];
  readonly joints?: readonly StripItem<JointState>[];
  readonly supports?: readonly StripItem<SupportState>[];
  readonly taps?: Readonly<Record<string, StripItem<TapState>>>;
}

/** What the strip needs to know of the run beside its layout. */
export type StripRun = Pick<
  Run,
  'id' | 'side' | 'feed' | 'conductorSide' | 'legs' | 'crossings' | 'noJoint' | 'noSupport'
>;

export interface StripProps {
  readonly run: StripRun;
  readonly layout: RunLayout;
  readonly record?: StripRecord;
  readonly units: UnitSystem;
  readonly ink: InkMode;
  /** Width of the drawing in its own units: px on a screen, pt on paper. */
  readonly width?: number;
  /** Drawing units for each unit of length, for a drawing to a stated scale; without it the density of the marks decides. */
  readonly scale?: number;
  /** Every thing in firm outline, whatever its state: a drawing to build from. */
  readonly allAlike?: boolean;
  /** Tells apart several drawings of one run on a page. */
  readonly idPrefix?: string;
}
