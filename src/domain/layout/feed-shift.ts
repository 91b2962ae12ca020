import type { BuswayType, Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { UncoveredPart } from './cover-run.ts';
import { coverableLengths, nearestCovered } from './coverable-lengths.ts';
import { type JointBar, jointBarTest } from './joint-bars.ts';
import { startJoint } from './joints-of.ts';
import type { SectionShop } from './section-shop.ts';

/** What a feed that can be shifted is held to. */
export interface FeedRoom {
  /** A joint stands at the feed, wherever it is shifted. */
  readonly joins: boolean;
  /** So far along the run before it meets the first wall or tap. */
  readonly mostAlong: Length;
}

/** A shift of the feed and the length that is then left to cover. */
export interface FeedShift {
  readonly by: Length;
  readonly length: Length;
}

/** The room that the feed of a part has to be shifted in; null for a part that does not begin at the feed of one end. */
export function feedRoom(run: Run, type: BuswayType, part: UncoveredPart): FeedRoom | null {
  if (part.from !== 0 || run.feed.kind !== 'end') return null;
  const walls = run.crossings.map(({ at, thickness }) => at - thickness / 2);
  const taps = run.taps.flatMap(({ place }) => ('at' in place ? [place.at] : []));
  return { joins: startJoint(run.feed, type).length > 0, mostAlong: Math.floor(Math.min(...walls, ...taps, Infinity)) };
}

/**
 * The least shifts of the feed, along the heading and against it, that let the first part be covered while everything else
 * stands where it is: the part's other end, walls, fixed taps. Looked for from that other end, in one pass. A part that may
 * end anywhere in a range is taken to its near end for a shift along the heading, to its far end for one against it.
 *
 * @example feedShifts(shop, part, bars, room).along // { by: feet(1), length: feet(60) } for 61 ft out of 5, 10 and 20 ft
 */
export function feedShifts(
  shop: SectionShop,
  part: UncoveredPart,
  bars: readonly JointBar[],
  room: FeedRoom,
): { readonly along: FeedShift | null; readonly against: FeedShift | null } {
  const [near, far] = 'reach' in part ? [part.reach, part.hardStop] : [part.to, part.to];
  const shorter = fromOtherEnd(shop, near, bars, room, 'shorter');
  const longer = fromOtherEnd(shop, far, bars, room, 'longer');
  const along = shorter === null || near - shorter > room.mostAlong ? null : { by: near - shorter, length: shorter };
  return { along, against: longer === null ? null : { by: longer - far, length: longer } };
}

/** The nearest length on one side of `end` that can be covered back from there, with the feed's own joint out of the bars. */
function fromOtherEnd(
  shop: SectionShop,
  end: Length,
  bars: readonly JointBar[],
  { joins }: FeedRoom,
  side: 'shorter' | 'longer',
): Length | null {
  const turned = bars.map((bar) => ({ ...bar, from: end - bar.to, to: end - bar.from }));
  const isBarred = jointBarTest(turned);
  const farthest = (shop.sums.values.at(-1) ?? 0) + (shop.cut?.max ?? 0);
  const covered = coverableLengths(shop, 0, side === 'shorter' ? end : Math.max(end, farthest), isBarred);
  if (covered === null) return null;
  let length = nearestCovered(covered, end, side);
  while (length !== null && joins && isBarred(length)) length = nearestCovered(covered, length, side);
  return length;
}
