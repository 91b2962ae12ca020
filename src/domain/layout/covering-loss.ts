import type { Length } from '../units/length.ts';
import type { CoveringCost, PlacedPiece } from './result.ts';
import { listed, type Say } from './say.ts';

/** Why a covering came after the one that wins: the first of the rules by which the two differ. Differences are to the winner's. */
export type CoveringLoss =
  | {
      readonly by: 'cost';
      /** Minor units, as are `pieces`, `cuts` and `making`; above 0. */
      readonly more: number;
      readonly pieces: number;
      readonly cuts: number;
      /** Kits and labour of the joints. */
      readonly making: number;
      readonly joints: number;
      readonly winnersJoints: number;
    }
  | { readonly by: 'end'; readonly away: Length; readonly winnersAway: Length }
  | { readonly by: 'joints'; readonly joints: number; readonly winnersJoints: number }
  | { readonly by: 'cut'; readonly cuts: number; readonly winnersCuts: number }
  | { readonly by: 'order'; readonly at: Length; readonly length: Length; readonly winnersLength: Length };

interface Compared {
  readonly pieces: readonly PlacedPiece[];
  readonly cost: CoveringCost;
  readonly away: Length;
}

/** What decided between a covering and the winner, by the order of the contract. */
export function coveringLoss(one: Compared, winner: Compared, centreFeedAt: Length | null): CoveringLoss {
  const more = one.cost.total - winner.cost.total;
  const [joints, winnersJoints] = [one.cost.joints, winner.cost.joints];
  if (more !== 0) {
    const pieces = one.cost.pieces - winner.cost.pieces;
    const cuts = one.cost.cuts - winner.cost.cuts;
    return { by: 'cost', more, pieces, cuts, making: more - pieces - cuts, joints, winnersJoints };
  }
  if (one.away !== winner.away) return { by: 'end', away: one.away, winnersAway: winner.away };
  if (joints !== winnersJoints) return { by: 'joints', joints, winnersJoints };
  const [cuts, winnersCuts] = [cutsIn(one), cutsIn(winner)];
  if (cuts !== winnersCuts) return { by: 'cut', cuts, winnersCuts };
  return firstDifference(one, winner, centreFeedAt);
}

/** The reason as a sentence. Without `money` no amount is told: only the office sees those. */
export function lossWords(loss: CoveringLoss, say: Say, money: ((minor: number) => string) | null): string {
  switch (loss.by) {
    case 'cost':
      return costWords(loss, money);
    case 'end':
      return `Same cost, but it ends ${say(loss.away)} from the length drawn, the winner ${say(loss.winnersAway)}.`;
    case 'joints':
      return `Same cost, ${jointWords(loss)}.`;
    case 'cut':
      return `Same cost and joints, but ${cutWords(loss.cuts)} where the winner has ${cutWords(loss.winnersCuts)}.`;
    case 'order':
      return `Same cost and joints, in another order: at ${say(loss.at)} it has ${say(loss.length)} where the winner has ${say(loss.winnersLength)}, and longer pieces go nearer the feed.`;
  }
}

function costWords(loss: CoveringLoss & { by: 'cost' }, money: ((minor: number) => string) | null): string {
  const sections = (minor: number) =>
    `its pieces cost ${money === null ? '' : `${money(Math.abs(minor))} `}${minor > 0 ? 'more' : 'less'}`;
  const surcharges = (minor: number) =>
    `its cut surcharges are ${money === null ? '' : `${money(Math.abs(minor))} `}${minor > 0 ? 'more' : 'less'}`;
  const reasons = [
    ...(loss.joints === loss.winnersJoints ? [] : [{ weighs: loss.making, words: jointWords(loss) }]),
    ...(loss.pieces === 0 ? [] : [{ weighs: loss.pieces, words: sections(loss.pieces) }]),
    ...(loss.cuts === 0 ? [] : [{ weighs: loss.cuts, words: surcharges(loss.cuts) }]),
  ];
  const dearer = reasons.filter(({ weighs }) => weighs > 0).map(({ words }) => words);
  const cheaper = reasons.filter(({ weighs }) => weighs < 0).map(({ words }) => words);
  const head = money === null ? 'Costs more' : `${money(loss.more)} more`;
  return `${head}: ${listed(dearer)}${cheaper.length === 0 ? '' : `, though ${listed(cheaper)}`}.`;
}

function jointWords({ joints, winnersJoints }: { joints: number; winnersJoints: number }): string {
  const difference = Math.abs(joints - winnersJoints);
  const amount = difference === 1 ? 'one joint' : `${difference} joints`;
  return `${amount} ${joints > winnersJoints ? 'more' : 'fewer'} (${joints} for ${winnersJoints})`;
}

function cutWords(cuts: number): string {
  if (cuts === 0) return 'none';
  return cuts === 1 ? 'a factory cut' : `${cuts} factory cuts`;
}

function cutsIn({ pieces }: Compared): number {
  return pieces.filter(({ kind }) => kind === 'cut').length;
}

/** The first place, part by part and from the feed outwards, where the two have pieces of different length. */
function firstDifference(one: Compared, winner: Compared, centreFeedAt: Length | null): CoveringLoss {
  const outwards = ({ pieces }: Compared) => {
    const before = pieces.filter(({ to }) => centreFeedAt !== null && to <= centreFeedAt).toReversed();
    return [...before, ...pieces.filter(({ to }) => centreFeedAt === null || to > centreFeedAt)];
  };
  const [mine, others] = [outwards(one), outwards(winner)];
  const place = mine.findIndex((piece, index) => lengthOf(piece) !== lengthOf(others[index]));
  const [piece, other] = [mine[place], others[place]];
  if (piece === undefined || other === undefined) throw new Error('two coverings that differ nowhere were compared');
  const nearFeed = centreFeedAt !== null && piece.to <= centreFeedAt ? piece.to : piece.from;
  return { by: 'order', at: nearFeed, length: lengthOf(piece), winnersLength: lengthOf(other) };
}

function lengthOf(piece: PlacedPiece | undefined): Length {
  return piece === undefined ? 0 : piece.to - piece.from;
}
