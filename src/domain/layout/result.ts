import type { Finding } from '../finding.ts';
import type { Side } from '../model.ts';
import type { Length } from '../units/length.ts';

export type ElbowHand = 'inside' | 'outside' | 'slot-inside' | 'slot-outside';
export type TeeHand = 'near-left' | 'near-right' | 'far-left' | 'far-right';

/** A section or a fitting in its place along the run, distances from the feed along the centre line. */
export interface PlacedPiece {
  readonly from: Length;
  readonly to: Length;
  readonly kind: 'stock' | 'cut' | 'elbow' | 'tee';
  /** null for a straight section, and for a fitting whose sheet says that it is not handed. */
  readonly hand: ElbowHand | TeeHand | null;
}

export interface PlacedSupport {
  readonly at: Length;
  /** Simple spans, kg, with all planned taps on. */
  readonly loadKg: number;
  /** Continuous beam over the same supports, kg. */
  readonly continuousLoadKg: number;
}

export interface PlacedTap {
  readonly id: string;
  readonly at: Length;
  /** Nearest place along the run that breaks no rule; null when the tap is legal where it is or no place is. */
  readonly nearestLegal: Length | null;
}

export interface Facing {
  /** 1 for the first leg. */
  readonly leg: number;
  /** Direction that taps face, in the heading convention of the document: 0 = +x (east), 90 = +y (north). */
  readonly compassDeg: number;
  readonly relative: Side;
}

/** A point of the centre line in space with the distance it stands at, for plan drawings. */
export interface PathPoint {
  readonly at: Length;
  readonly x: Length;
  readonly y: Length;
  readonly z: Length;
}

/** The winner's reckoning, so that a page can show why it won. Minor units but for `joints`; an absent price counts 0. */
export interface CoveringCost {
  /** Prices of all pieces, fittings included. */
  readonly pieces: number;
  /** Surcharges of the factory cuts. */
  readonly cuts: number;
  /** How many joints. */
  readonly joints: number;
  /** Kits and labour of all of them. */
  readonly jointKit: number;
  readonly jointLabour: number;
  readonly total: number;
}

/**
 * `ok` false: the sections cannot be laid, and pieces, joints, supports and facing are empty; `findings` say why and what would
 * make it work. `length` (as drawn), `path` and the distances of `taps` stay, for drawings and the electrical check.
 * `ok` true with empty `supports` and a stop: the covering is sound, the supports cannot be laid. Other stops (taps, facing, a
 * continuous load) leave the lists as they are. A centre feed that joins has both its joints at one distance.
 */
export interface RunLayout {
  readonly run: string;
  readonly ok: boolean;
  readonly length: Length;
  readonly pieces: readonly PlacedPiece[];
  readonly joints: readonly { readonly at: Length }[];
  readonly supports: readonly PlacedSupport[];
  readonly taps: readonly PlacedTap[];
  readonly facing: readonly Facing[];
  readonly path: readonly PathPoint[];
  readonly cost: CoveringCost | null;
  readonly findings: readonly Finding[];
}
