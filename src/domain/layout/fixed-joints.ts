import type { BuswayType, RunFeed } from '../model.ts';
import type { Length } from '../units/length.ts';
import { startJoint } from './joints-of.ts';
import type { PlacedFitting } from './place-fittings.ts';
import type { StraightParts } from './straight-parts.ts';

/** A joint that stands where a fitting or the feed puts it, whatever the sections are. */
export interface FixedJoint {
  readonly at: Length;
  /** "the elbow's face", "the feed". */
  readonly owner: string;
}

/** The joints that no choice of sections can move: the feed's own, and those at the faces of fittings. */
export function fixedJoints(
  feed: RunFeed,
  type: BuswayType,
  fittings: readonly PlacedFitting[],
  parts: StraightParts,
): readonly FixedJoint[] {
  const start = startJoint(feed, type).map((at) => ({
    at,
    owner: feed.kind === 'tee' ? "the tee's branch" : 'the feed',
  }));
  const centre = parts.feedAt === null ? [] : [{ at: parts.feedAt, owner: 'the centre feed' }];
  // Where a run may end at a fitting's own face, a section joins on there only if one is chosen.
  const end = parts.last.reach;
  const faces = fittings.flatMap(({ kind, from, to }) => [
    { at: from, owner: `the ${kind}` },
    { at: to, owner: `the ${kind}` },
  ]);
  const all = [...start, ...centre, ...faces.filter((face) => face.at > 0 && face.at < end)];
  const seen = new Set<Length>();
  return all.filter((joint) => !seen.has(joint.at) && seen.add(joint.at));
}
