import type { PathPoint, PlacedPiece } from '../layout/result.ts';
import type { Length } from '../units/length.ts';
import type { Window } from './support-surroundings.ts';

/**
 * The horizontal stretch that a hanger belongs to: between the elbows of the risers on both sides of it, or the ends of the
 * run. A riser has supports of its own, so no spacing is counted across it.
 */
export function supportStretch(
  planned: Length,
  path: readonly PathPoint[],
  pieces: readonly PlacedPiece[],
  length: Length,
): Window {
  const risers = path.slice(1).flatMap((point, index) => {
    const before = path[index];
    return before !== undefined && before.z !== point.z ? [{ from: before.at, to: point.at }] : [];
  });
  const below = Math.max(0, ...risers.filter(({ to }) => to <= planned).map(({ to }) => to));
  const above = Math.min(length, ...risers.filter(({ from }) => from >= planned).map(({ from }) => from));
  return {
    from: elbowAt(pieces, below)?.to ?? below,
    to: elbowAt(pieces, above)?.from ?? above,
  };
}

function elbowAt(pieces: readonly PlacedPiece[], corner: Length): PlacedPiece | undefined {
  return pieces.find(({ kind, from, to }) => kind === 'elbow' && from < corner && corner < to);
}
