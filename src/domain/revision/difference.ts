import type { LabourLine } from '../labour/result.ts';
import type { PlacedPiece } from '../layout/result.ts';
import type { Crossing, Tap } from '../model.ts';
import type { Length } from '../units/length.ts';

/** A thing of one revision by its place in that revision's list. */
export interface PieceAt {
  readonly index: number;
  readonly piece: PlacedPiece;
}

export interface PointAt {
  readonly index: number;
  readonly at: Length;
}

/** The same thing before and after. */
export interface Pair<T> {
  readonly before: T;
  readonly after: T;
}

export interface HoursDifference {
  readonly activity: LabourLine['activity'];
  readonly before: number;
  readonly after: number;
}

/** What a revision takes up again of work that may be done and of papers that may be signed. */
export interface Reopened {
  /** Joints of the new revision that nobody can have made yet. */
  readonly joints: readonly PointAt[];
  /** Hangers to set, and hangers that stay where they are and carry another load (at least 0.1 kg, in either sum). */
  readonly supports: readonly PointAt[];
  readonly loads: readonly Pair<{ readonly at: Length; readonly loadKg: number }>[];
  /** How many hangers stay where they are and get other rods. */
  readonly rods: number;
  /** The tap-offs face the other side, so that every piece that hangs comes down and is hung again. */
  readonly turnedOver: boolean;
  /** Runs whose insulation test is void once the work is done: the whole electrical boundary; empty when nothing that a test measures changes. */
  readonly insulationTests: readonly string[];
  /** Labels to make or set: new joints by distance, tap-offs that are new or say something else. */
  readonly labels: { readonly joints: readonly PointAt[]; readonly taps: readonly string[] };
  /** Drop cords that change their length; null is none. */
  readonly drops: readonly { readonly tap: string; readonly before: Length | null; readonly after: Length | null }[];
  /** Likely hours with the level's conditions and before learning, by activity, where they differ. */
  readonly hours: readonly HoursDifference[];
}

/** Something that the run says of itself as a whole. */
export type Fact =
  | 'place'
  | 'heading'
  | 'facing'
  | 'level'
  | 'area'
  | 'side'
  | 'supply'
  | 'device'
  | 'rod-length'
  | 'rod'
  | 'attachment'
  | 'capacity'
  | 'crossings';

/** A fact that differs; the values as the model has them. */
export interface FactDifference {
  readonly fact: Fact;
  readonly before: FactValue;
  readonly after: FactValue;
}
export type FactValue =
  | { readonly kind: 'word'; readonly word: string | null }
  | { readonly kind: 'length'; readonly length: Length | null }
  | { readonly kind: 'weight'; readonly kg: number | null }
  | { readonly kind: 'amperes'; readonly amperes: number | null }
  | { readonly kind: 'place'; readonly x: Length; readonly y: Length; readonly z: Length }
  | { readonly kind: 'heading'; readonly degrees: number | null }
  | { readonly kind: 'crossings'; readonly crossings: readonly Crossing[] };

export interface RevisionDifference {
  readonly length: Pair<Length>;
  readonly facts: readonly FactDifference[];
  readonly pieces: {
    readonly added: readonly PieceAt[];
    readonly removed: readonly PieceAt[];
    /** The same piece at another distance. */
    readonly moved: readonly Pair<PieceAt>[];
    /** Another piece in the very place of one that leaves: kind or hand differs. */
    readonly replaced: readonly Pair<PieceAt>[];
    readonly same: number;
  };
  readonly joints: ThingsDifference;
  /** A hanger is the same while its distance is: it never moves, it leaves and comes. */
  readonly supports: ThingsDifference;
  readonly taps: {
    readonly added: readonly TapAt[];
    readonly removed: readonly TapAt[];
    readonly moved: readonly Pair<TapAt>[];
    /** The same tap-off with another device, phase, load or name, wherever it stands. */
    readonly changed: readonly Pair<TapAt>[];
    readonly same: number;
  };
  readonly reopened: Reopened;
}

export interface ThingsDifference {
  readonly added: readonly PointAt[];
  readonly removed: readonly PointAt[];
  readonly moved: readonly Pair<PointAt>[];
  readonly same: number;
}

export interface TapAt {
  readonly tap: Tap;
  readonly at: Length;
}
