import type { Length } from '../units/length.ts';

/** Stands for the feed where a joint has a piece on one side only. */
export const FEED = -1;

/** The pieces on both sides of a joint by their places in the list; `FEED` where there is none. */
export interface PiecesAtJoint {
  readonly left: number;
  readonly right: number;
}

/**
 * The pieces on both sides of every joint, the feed as `FEED`. Two joints at one distance are those of a centre feed: the first
 * joins the piece before it to the feed, the second the feed to the piece after it.
 *
 * Example: pieces of 20 and 10 ft with joints at 0 and 20 ft give `[{ left: FEED, right: 0 }, { left: 0, right: 1 }]`.
 */
export function piecesAtJoints(
  pieces: readonly { readonly from: Length; readonly to: Length }[],
  joints: readonly { readonly at: Length }[],
): PiecesAtJoint[] {
  const endingAt = new Map(pieces.map((piece, index) => [piece.to, index]));
  const startingAt = new Map(pieces.map((piece, index) => [piece.from, index]));
  return joints.map(({ at }, index) => {
    const isFirstOfTwo = joints[index + 1]?.at === at;
    const isSecondOfTwo = joints[index - 1]?.at === at;
    return {
      left: isSecondOfTwo ? FEED : (endingAt.get(at) ?? FEED),
      right: isFirstOfTwo ? FEED : (startingAt.get(at) ?? FEED),
    };
  });
}
