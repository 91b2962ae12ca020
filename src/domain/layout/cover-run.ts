import { coverLastPart } from './cover-last-part.ts';
import { type Covering, coverPart } from './cover-part.ts';
import { type JointBar, jointBarTest } from './joint-bars.ts';
import type { PlacedFitting } from './place-fittings.ts';
import type { PlacedPiece } from './result.ts';
import type { SectionShop } from './section-shop.ts';
import type { LastPart, StraightPart, StraightParts } from './straight-parts.ts';

/** A straight part that no covering fits. */
export type UncoveredPart = StraightPart | LastPart;

export type RunCovering =
  | { readonly ok: true; readonly pieces: readonly PlacedPiece[] }
  | { readonly ok: false; readonly uncovered: readonly UncoveredPart[] };

/**
 * Covers every straight part of a run, each on its own: the fittings between them stand still, so the cheapest run is made of
 * the cheapest parts, and its tie-breaks of theirs.
 */
export function coverRun(
  shop: SectionShop,
  parts: StraightParts,
  fittings: readonly PlacedFitting[],
  bars: readonly JointBar[],
): RunCovering {
  // Too many sums to search them all: a covering found among some of them would not be the one that wins.
  if (shop.sums.cutShort) return { ok: false, uncovered: [...parts.inner, parts.last] };
  const isBarred = jointBarTest(bars);
  const inner = parts.inner.map((part) => ({ part, covering: coverPart(shop, part, isBarred) }));
  const covered = [...inner, { part: parts.last, covering: coverLastPart(shop, parts.last, isBarred) }];
  const uncovered = covered.filter(({ covering }) => covering === null).map(({ part }) => part);
  if (uncovered.length > 0) return { ok: false, uncovered };
  const straight = covered.flatMap(({ part, covering }) => placed(part.from, covering));
  const bodies = fittings.map(({ from, to, kind, hand }): PlacedPiece => ({ from, to, kind, hand }));
  return { ok: true, pieces: [...straight, ...bodies].sort((a, b) => a.from - b.from) };
}

function placed(start: number, covering: Covering | null): PlacedPiece[] {
  let from = start;
  return (covering?.pieces ?? []).map((piece) => {
    const to = from + piece.length;
    const section: PlacedPiece = { from, to, kind: piece.cut ? 'cut' : 'stock', hand: null };
    from = to;
    return section;
  });
}
