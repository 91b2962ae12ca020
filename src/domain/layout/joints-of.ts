import type { BuswayType, RunFeed } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { PlacedPiece, RunLayout } from './result.ts';

/**
 * The joints of a run, from the feed: one wherever two pieces meet, and those of the feed. An end feed has one at 0 where the
 * sheet says that it joins; a branch owns the one at its own 0. A centre feed that joins stands between the two halves, so
 * both its joints are listed at its distance and take the place of the halves' own.
 */
export function jointsOf(
  pieces: readonly PlacedPiece[],
  feed: RunFeed,
  type: BuswayType,
  centreFeedAt: Length | null,
): RunLayout['joints'] {
  const between = pieces.slice(1).map((piece) => piece.from);
  const feedJoints = centreFeedAt !== null && type.feed.joins ? [centreFeedAt] : startJoint(feed, type);
  return [...between, ...feedJoints].sort((a, b) => a - b).map((at) => ({ at }));
}

/** The joint at a run's own 0, if it has one. */
export function startJoint(feed: RunFeed, type: BuswayType): readonly Length[] {
  switch (feed.kind) {
    case 'end':
      return type.feed.joins ? [0] : [];
    case 'tee':
      return [0];
    case 'centre':
      return [];
  }
}
