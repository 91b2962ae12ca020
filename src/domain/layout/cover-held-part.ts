import type { BuswayType, HeldSection } from '../model.ts';
import type { Length } from '../units/length.ts';
import { coverLastPart } from './cover-last-part.ts';
import { type Covering, type CoverPiece, coverPart, type IsBarred } from './cover-part.ts';
import type { Say } from './say.ts';
import { isCuttable, type SectionShop } from './section-shop.ts';
import type { LastPart, StraightPart } from './straight-parts.ts';

export type HeldCovering =
  | { readonly ok: true; readonly covering: Covering }
  /** Half a sentence: why the sections cannot stand here. */
  | { readonly ok: false; readonly why: string };

export interface HeldRules {
  readonly type: BuswayType;
  readonly isBarred: IsBarred;
  readonly say: Say;
}

/**
 * The covering of one straight part that keeps these sections in their places: what is left between and beside them is
 * covered as ever, with at most one factory cut in the whole part. Otherwise why not. Lengths in 1/80 mm.
 *
 * @example coverHeldPart(shop, part, held, { type, isBarred, say }).ok
 */
export function coverHeldPart(
  shop: SectionShop,
  part: StraightPart | LastPart,
  held: readonly HeldSection[],
  rules: HeldRules,
): HeldCovering {
  const strange = held.find((section) => !isMade(section, rules.type));
  if (strange !== undefined) {
    const length = rules.say(strange.to - strange.from);
    return { ok: false, why: `type ${rules.type.id} has no section of ${length} any more` };
  }
  const cuts = held.filter(({ kind }) => kind === 'cut').length;
  if (cuts > 1) return { ok: false, why: `${cuts} factory cuts would stand in one straight part, which takes one` };
  const around = bestAround(shop, part, held, cuts === 1, rules.isBarred);
  if (around === null) return { ok: false, why: 'no sections that the type comes in fill what is left beside them' };
  const barred = jointsIn(part.from, around).find(rules.isBarred);
  if (barred !== undefined) return { ok: false, why: `a joint at ${rules.say(barred)} would stand where no joint may` };
  return { ok: true, covering: around };
}

function isMade({ from, to, kind }: HeldSection, { stockLengths, factoryCut }: BuswayType): boolean {
  if (kind === 'stock') return stockLengths.includes(to - from);
  return factoryCut !== null && isCuttable(factoryCut, to - from);
}

/** The rests beside the held sections, at most one of them with a cut: whichever wins. */
function bestAround(
  shop: SectionShop,
  part: StraightPart | LastPart,
  held: readonly HeldSection[],
  hasCut: boolean,
  isBarred: IsBarred,
): Covering | null {
  const rests = restsOf(part, held);
  const plain = { ...shop, cut: null };
  const withCut = hasCut || shop.cut === null ? [-1] : [-1, ...rests.keys()];
  const ways = withCut.flatMap((cutting) => {
    const covered = rests.map((rest, index) => coverRest(index === cutting ? shop : plain, rest, isBarred));
    return covered.includes(null)
      ? []
      : [
          joined(
            covered.filter((one) => one !== null),
            held,
          ),
        ];
  });
  return ways.reduce<Covering | null>((best, way) => (best === null || beats(way, best, part) ? way : best), null);
}

function restsOf(part: StraightPart | LastPart, held: readonly HeldSection[]): (StraightPart | LastPart)[] {
  const { towardsFeed } = part;
  const rests: (StraightPart | LastPart)[] = [];
  let from = part.from;
  for (const section of held) {
    rests.push({ from, to: section.from, towardsFeed });
    from = section.to;
  }
  return [...rests, 'reach' in part ? { ...part, from, reach: Math.max(part.reach, from) } : { ...part, from }];
}

function coverRest(shop: SectionShop, rest: StraightPart | LastPart, isBarred: IsBarred): Covering | null {
  return 'reach' in rest ? coverLastPart(shop, rest, isBarred) : coverPart(shop, rest, isBarred);
}

function joined(rests: readonly Covering[], held: readonly HeldSection[]): Covering {
  const pieces = rests.flatMap((rest, index): CoverPiece[] => {
    const next = held[index];
    const kept = next === undefined ? [] : [{ length: next.to - next.from, cut: next.kind === 'cut' }];
    return [...rest.pieces, ...kept];
  });
  // What the held sections cost is the same in every way, so it decides nothing.
  return { pieces, cost: rests.reduce((sum, rest) => sum + rest.cost, 0) };
}

function jointsIn(from: Length, { pieces }: Covering): Length[] {
  let at = from;
  return pieces.slice(0, -1).map((piece) => {
    at += piece.length;
    return at;
  });
}

/** As coverings win everywhere: cost, nearness of a free end, joints, cuts, longer pieces nearer the feed. */
function beats(a: Covering, b: Covering, part: StraightPart | LastPart): boolean {
  const away = ({ pieces }: Covering) =>
    'reach' in part ? Math.abs(part.from + pieces.reduce((sum, { length }) => sum + length, 0) - part.nominal) : 0;
  const cuts = ({ pieces }: Covering) => pieces.filter(({ cut }) => cut).length;
  const difference = a.cost - b.cost || away(a) - away(b) || a.pieces.length - b.pieces.length || cuts(a) - cuts(b);
  return (difference || longerFirst(a, b, part.towardsFeed)) < 0;
}

function longerFirst(a: Covering, b: Covering, towardsFeed: 'from' | 'to'): number {
  const order = ({ pieces }: Covering) => (towardsFeed === 'from' ? pieces : pieces.toReversed());
  const [mine, others] = [order(a), order(b)];
  for (const [index, piece] of mine.entries()) {
    const difference = (others[index]?.length ?? 0) - piece.length;
    if (difference !== 0) return difference;
  }
  return 0;
}
