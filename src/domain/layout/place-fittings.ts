import type { BuswayType, Run, Turn } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { LayoutContext } from './context-for.ts';
import type { RunGeometry } from './geometry.ts';
import { elbowHand, teeHand } from './hands.ts';
import type { PlacedPiece } from './result.ts';

/** An elbow or a tee in its place: its body runs from `from` to `to`, its centre is the corner or the branch's centre. */
export interface PlacedFitting {
  readonly kind: 'elbow' | 'tee';
  readonly from: Length;
  readonly at: Length;
  readonly to: Length;
  readonly hand: PlacedPiece['hand'];
  readonly weightKg: number | null;
}

/** The sheet has no such fitting, so the run cannot be built of this type. */
export interface MissingFitting {
  readonly kind: 'elbow' | 'tee';
  readonly at: Length;
  readonly what: string;
}

export interface Fittings {
  readonly placed: readonly PlacedFitting[];
  readonly missing: readonly MissingFitting[];
}

/** The fittings of a run in order: an elbow at each turn, a tee for each branch (`legMm` on each side of its centre). */
export function placeFittings(run: Run, geometry: RunGeometry, context: LayoutContext): Fittings {
  const elbows = geometry.legs.flatMap((leg) =>
    leg.turn === 'none' ? [] : [elbow(run, context.type, leg.turn, leg.to)],
  );
  const tees = context.branches.map((branch) => tee(run, context.type, branch));
  const all = [...elbows, ...tees].sort((a, b) => a.at - b.at);
  return {
    placed: all.filter((fitting) => 'hand' in fitting),
    missing: all.filter((fitting) => 'what' in fitting),
  };
}

type Found = PlacedFitting | MissingFitting;

function elbow(run: Run, type: BuswayType, turn: Exclude<Turn, 'none'>, at: Length): Found {
  if (type.elbow === null) return { kind: 'elbow', at, what: `the run turns ${turn}` };
  const { leg, handed, weightKg } = type.elbow;
  const hand = handed ? elbowHand(turn, run.conductorSide) : null;
  return { kind: 'elbow', from: at - leg, at, to: at + leg, hand, weightKg };
}

function tee(run: Run, type: BuswayType, branch: Run): Found {
  const at = branch.feed.at ?? 0;
  if (type.tee === null) return { kind: 'tee', at, what: `run ${branch.id} branches off` };
  const { leg, handed, weightKg } = type.tee;
  const leaves = branch.feed.branchSide;
  const hand = handed && leaves !== null ? teeHand(run.conductorSide, leaves, branch.conductorSide) : null;
  return { kind: 'tee', from: at - leg, at, to: at + leg, hand, weightKg };
}
