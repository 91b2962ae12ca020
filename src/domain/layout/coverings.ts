import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { LayoutContext } from './context-for.ts';
import type { CoverPiece } from './cover-part.ts';
import { coveringCost } from './covering-cost.ts';
import { type CoveringLoss, coveringLoss } from './covering-loss.ts';
import { SUBSTITUTION_KEPT } from './field-hold-findings.ts';
import { runGeometry } from './geometry.ts';
import { jointBars, jointBarTest } from './joint-bars.ts';
import { jointsOf } from './joints-of.ts';
import { layoutRun } from './layout-run.ts';
import { MOST_STEPS, type PartWay, partWays } from './part-ways.ts';
import { type PlacedFitting, placeFittings } from './place-fittings.ts';
import type { CoveringCost, PlacedPiece, RunLayout } from './result.ts';
import { sayIn } from './say.ts';
import { shopFor, shopList } from './shop-list.ts';
import { type LastPart, type StraightPart, type StraightParts, straightParts } from './straight-parts.ts';
import { tapPlaces } from './tap-places.ts';

/** One whole covering of a run, with its reckoning. */
export interface RankedCovering {
  readonly length: Length;
  readonly pieces: readonly PlacedPiece[];
  readonly joints: RunLayout['joints'];
  readonly cost: CoveringCost;
  /** From the length drawn to where this one ends; 0 without a free end. */
  readonly away: Length;
  /** Why it lost; null for the winner. */
  readonly loss: CoveringLoss | null;
}

export interface RunCoverings {
  /** The winner first; none where the run cannot be covered. */
  readonly coverings: readonly RankedCovering[];
  /** False: there are too many to go through them all, and the winner stands alone. */
  readonly compared: boolean;
  /** True: the run is kept to what the floor substituted, so nothing was chosen by cost and the covering stands alone. */
  readonly held: boolean;
}

const SHOWN = 3;

/**
 * The covering of a run that wins and the next two distinct ones, by the order in which coverings win (job document, "Which
 * covering wins"), each with its cost in minor units and why it lost. Two coverings are distinct when in some straight part
 * their stock pieces, the order of these or the place of a cut among them differ; the same with a longer or shorter cut is
 * one choice, told at its best. A run that is kept to what the floor substituted has one alone. Exact. Worked for one run when somebody asks; a layout does not need it.
 * Past `mostSteps` of the search in a part the winner stands alone and it is said so.
 *
 * @example coverings(run, contextFor(job, run)).coverings[1]?.loss
 */
export function coverings(run: Run, context: LayoutContext, mostSteps: number = MOST_STEPS): RunCoverings {
  const layout = layoutRun(run, context);
  if (!layout.ok || layout.cost === null) return { coverings: [], compared: true, held: false };
  const { length, pieces, joints, cost } = layout;
  if (run.fieldHold !== null) {
    // Nothing of it stands any more: the layout chose every section freely, and so they are compared.
    if (!layout.findings.some(({ rule }) => rule === SUBSTITUTION_KEPT)) {
      return coverings({ ...run, fieldHold: null }, context, mostSteps);
    }
    return { coverings: [{ length, pieces, joints, cost, away: 0, loss: null }], compared: false, held: true };
  }
  const geometry = runGeometry(run, context.parent);
  const fittings = placeFittings(run, geometry, context).placed;
  const division = straightParts(run, geometry, fittings);
  if (division.kind !== 'parts') throw new Error(`run ${run.id} is laid out and yet has no straight parts`);
  const { parts } = division;
  const ranked = rankedWays(run, context, parts, tapPlaces(run, geometry, parts.last.hardStop), mostSteps);
  if (ranked === null) {
    const away = Math.abs(length - parts.last.nominal);
    return { coverings: [{ length, pieces, joints, cost, away, loss: null }], compared: false, held: false };
  }
  const found = ranked.map((way) => placed(run, context, parts, fittings, way));
  return { coverings: withLosses(found, parts), compared: true, held: false };
}

/** A way for each straight part, in the order of `fromFeedOutwards`. */
interface RunWay {
  readonly parts: readonly PartWay[];
  readonly cost: number;
  readonly away: Length;
  readonly count: number;
  readonly cuts: number;
}

/** The best ways of the run are made of the best of its parts: what they are compared by adds up, part by part. */
function rankedWays(
  run: Run,
  context: LayoutContext,
  parts: StraightParts,
  taps: Parameters<typeof jointBars>[2],
  mostSteps: number,
): readonly RunWay[] | null {
  const shop = shopFor(shopList(context), parts);
  const isBarred = jointBarTest(jointBars(run, context.type, taps, sayIn(context.project.units)));
  let best: readonly RunWay[] = [{ parts: [], cost: 0, away: 0, count: 0, cuts: 0 }];
  for (const part of fromFeedOutwards(parts)) {
    const [whole, barred] = fromTheFeed(part, isBarred);
    const ways = partWays(shop, whole, barred, SHOWN, mostSteps);
    if (ways === null) return null;
    const longer = best.flatMap((way) => ways.map((next) => followedBy(way, next)));
    best = longer.sort(compareWays).slice(0, SHOWN);
  }
  return best;
}

/** The parts as they are compared: before a centre feed from there back, then those after it. */
function fromFeedOutwards({ inner, last }: StraightParts): readonly (StraightPart | LastPart)[] {
  const before = inner.filter(({ towardsFeed }) => towardsFeed === 'to').toReversed();
  return [...before, ...inner.filter(({ towardsFeed }) => towardsFeed === 'from'), last];
}

/** Before a centre feed a part is looked at the other way round, so that its pieces too are in order from the feed. */
function fromTheFeed(
  part: StraightPart | LastPart,
  isBarred: (at: Length) => boolean,
): [LastPart, (at: Length) => boolean] {
  if ('reach' in part) return [part, isBarred];
  const { from, to, towardsFeed } = part;
  const whole = { from, reach: to, hardStop: to, nominal: to, towardsFeed };
  return [whole, towardsFeed === 'from' ? isBarred : (at) => isBarred(from + to - at)];
}

function followedBy(way: RunWay, next: PartWay): RunWay {
  return {
    parts: [...way.parts, next],
    cost: way.cost + next.cost,
    away: way.away + next.away,
    count: way.count + next.pieces.length,
    cuts: way.cuts + next.cuts,
  };
}

function compareWays(a: RunWay, b: RunWay): number {
  return a.cost - b.cost || a.away - b.away || a.count - b.count || a.cuts - b.cuts || longerFirst(a, b);
}

function longerFirst(a: RunWay, b: RunWay): number {
  for (const [index, part] of a.parts.entries()) {
    const other = b.parts[index]!.pieces;
    for (const [place, piece] of part.pieces.entries()) {
      const difference = (other[place]?.length ?? 0) - piece.length;
      if (difference !== 0) return difference;
    }
  }
  return 0;
}

type Placed = Omit<RankedCovering, 'loss'>;

function placed(
  run: Run,
  context: LayoutContext,
  parts: StraightParts,
  fittings: readonly PlacedFitting[],
  way: RunWay,
): Placed {
  const straight = fromFeedOutwards(parts).flatMap((part, index) => sectionsOf(part, way.parts[index]!.pieces));
  const bodies = fittings.map(({ from, to, kind, hand }): PlacedPiece => ({ from, to, kind, hand }));
  const pieces = [...straight, ...bodies].sort((a, b) => a.from - b.from);
  const joints = jointsOf(pieces, run.feed, context.type, parts.feedAt);
  const cost = coveringCost(pieces, joints.length, context.type.prices, context.jointLabour);
  return { length: pieces.at(-1)?.to ?? 0, pieces, joints, cost, away: way.away };
}

function sectionsOf(part: StraightPart | LastPart, fromFeed: readonly CoverPiece[]): PlacedPiece[] {
  let from = part.from;
  return (part.towardsFeed === 'from' ? fromFeed : fromFeed.toReversed()).map(({ length, cut }) => {
    const section: PlacedPiece = { from, to: from + length, kind: cut ? 'cut' : 'stock', hand: null };
    from += length;
    return section;
  });
}

function withLosses(found: readonly Placed[], { feedAt }: StraightParts): readonly RankedCovering[] {
  const [winner] = found;
  if (winner === undefined) return [];
  return found.map((one) => ({ ...one, loss: one === winner ? null : coveringLoss(one, winner, feedAt) }));
}
