import type { BuswayType, FieldHold, HeldSection } from '../model.ts';
import { coverHeldPart } from './cover-held-part.ts';
import { coverLastPart } from './cover-last-part.ts';
import { type Covering, coverPart, type IsBarred } from './cover-part.ts';
import { type JointBar, jointBarTest } from './joint-bars.ts';
import type { PlacedFitting } from './place-fittings.ts';
import type { PlacedPiece } from './result.ts';
import type { Say } from './say.ts';
import type { SectionShop } from './section-shop.ts';
import type { LastPart, StraightPart, StraightParts } from './straight-parts.ts';

/** A straight part that no covering fits. */
export type UncoveredPart = StraightPart | LastPart;

/** Sections that the floor put in and that cannot stand on the route any more, with half a sentence why. */
export interface LostSections {
  readonly sections: readonly HeldSection[];
  readonly why: string;
}

export type RunCovering =
  | { readonly ok: true; readonly pieces: readonly PlacedPiece[]; readonly lost: readonly LostSections[] }
  | { readonly ok: false; readonly uncovered: readonly UncoveredPart[] };

/** What a run is kept to, and what it takes to see whether it can be. */
export interface Holding {
  readonly hold: FieldHold;
  readonly type: BuswayType;
  readonly say: Say;
}

/**
 * Covers every straight part of a run, each on its own: the fittings between them stand still, so the cheapest run is made of
 * the cheapest parts, and its tie-breaks of theirs. A part that holds what the floor substituted keeps it where it can.
 */
export function coverRun(
  shop: SectionShop,
  parts: StraightParts,
  fittings: readonly PlacedFitting[],
  bars: readonly JointBar[],
  holding: Holding | null = null,
): RunCovering {
  // Too many sums to search them all: a covering found among some of them would not be the one that wins.
  if (shop.sums.cutShort) return { ok: false, uncovered: [...parts.inner, parts.last] };
  const isBarred = jointBarTest(bars);
  const held = holding === null ? NOTHING : heldIn(shop, parts, isBarred, holding);
  const covered = [...parts.inner, parts.last].map((part) => ({
    part,
    covering: held.coverings.get(part) ?? freely(shop, part, isBarred),
  }));
  const uncovered = covered.filter(({ covering }) => covering === null).map(({ part }) => part);
  if (uncovered.length > 0) return { ok: false, uncovered };
  const straight = covered.flatMap(({ part, covering }) => placed(part.from, covering));
  const bodies = fittings.map(({ from, to, kind, hand }): PlacedPiece => ({ from, to, kind, hand }));
  return { ok: true, pieces: [...straight, ...bodies].sort((a, b) => a.from - b.from), lost: held.lost };
}

function freely(shop: SectionShop, part: UncoveredPart, isBarred: IsBarred): Covering | null {
  return 'reach' in part ? coverLastPart(shop, part, isBarred) : coverPart(shop, part, isBarred);
}

interface HeldParts {
  readonly coverings: ReadonlyMap<UncoveredPart, Covering>;
  readonly lost: readonly LostSections[];
}

const NOTHING: HeldParts = { coverings: new Map(), lost: [] };

/** Each held section belongs to the straight part that it lies in; one that lies in none is lost. */
function heldIn(shop: SectionShop, parts: StraightParts, isBarred: IsBarred, { hold, type, say }: Holding): HeldParts {
  const coverings = new Map<UncoveredPart, Covering>();
  const lost: LostSections[] = [];
  const left = new Set(hold.sections);
  for (const part of [...parts.inner, parts.last]) {
    const sections = hold.sections.filter((section) => isWithin(section, part));
    for (const section of sections) left.delete(section);
    if (sections.length === 0) continue;
    const kept = coverHeldPart(shop, part, sections, { type, isBarred, say });
    if (kept.ok) coverings.set(part, kept.covering);
    else lost.push({ sections, why: kept.why });
  }
  if (left.size > 0)
    lost.push({ sections: [...left], why: 'a fitting or the feed stands there now, or the run ends before it' });
  return { coverings, lost };
}

function isWithin({ from, to }: HeldSection, part: UncoveredPart): boolean {
  return from >= part.from && to <= ('reach' in part ? part.hardStop : part.to);
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
