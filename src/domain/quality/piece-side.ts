import type { PlacedPiece } from '../layout/result.ts';
import type { Side } from '../model.ts';

export type PieceKind = PlacedPiece['kind'];

/**
 * What a piece seen with its conductors on the other side than the run's needs: `turn` it end for end, or `reorder` because
 * it is another part. Turned end for end a straight section changes its side, and so does a vertical elbow, which keeps its
 * turn. A horizontal elbow seen from its other end turns the other way with its conductors on the other side, so inside stays
 * inside; a tee likewise stays near or far. A fitting that the sheet calls not handed serves both ways round.
 *
 * Example: an elbow needed as `inside` and seen on the wrong side is an `outside` elbow: reorder.
 */
export function sideRemedy(piece: Pick<PlacedPiece, 'kind' | 'hand'>): 'turn' | 'reorder' {
  switch (piece.hand) {
    case null:
    case 'slot-inside':
    case 'slot-outside':
      return 'turn';
    case 'inside':
    case 'outside':
    case 'near-left':
    case 'near-right':
    case 'far-left':
    case 'far-right':
      return 'reorder';
  }
}

const OTHER_SIDE = {
  inside: 'outside',
  outside: 'inside',
  'slot-inside': 'slot-inside',
  'slot-outside': 'slot-outside',
  'near-left': 'far-left',
  'near-right': 'far-right',
  'far-left': 'near-left',
  'far-right': 'near-right',
} as const satisfies Readonly<Record<NonNullable<PlacedPiece['hand']>, PlacedPiece['hand']>>;

/** The hand of the part that is really there when its conductors are seen on the other side; null for a piece without one. */
export function handSeen(needed: PlacedPiece['hand'], neededSide: Side, seenSide: Side): PlacedPiece['hand'] {
  return needed === null || neededSide === seenSide ? needed : OTHER_SIDE[needed];
}
