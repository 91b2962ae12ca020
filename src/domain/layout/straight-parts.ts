import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { RunGeometry } from './geometry.ts';
import type { PlacedFitting } from './place-fittings.ts';

/** A stretch of straight busway between fittings, and which of its ends is nearer the feed. */
export interface StraightPart {
  readonly from: Length;
  readonly to: Length;
  readonly towardsFeed: 'from' | 'to';
}

/** The last straight part, which may end anywhere from `reach` to `hardStop`, best at `nominal`. */
export interface LastPart {
  readonly from: Length;
  readonly reach: Length;
  readonly hardStop: Length;
  readonly nominal: Length;
  readonly towardsFeed: 'from' | 'to';
}

export interface StraightParts {
  /** In order; parts without length are left out: the fittings beside them join directly. */
  readonly inner: readonly StraightPart[];
  readonly last: LastPart;
  /** Where the two halves of a centre-fed run meet at the feed; null for any other run. */
  readonly feedAt: Length | null;
}

/** Two fittings, or a fitting and an end of the run, that need more room than there is. */
export interface Overlap {
  readonly before: PlacedFitting | null;
  readonly after: PlacedFitting | null;
  readonly at: Length;
  readonly short: Length;
}

/** The centre feed cannot stand where it is drawn. */
export interface MisplacedFeed {
  readonly feedAt: Length;
  readonly inside: PlacedFitting | null;
}

export type Division =
  | { readonly kind: 'parts'; readonly parts: StraightParts }
  | { readonly kind: 'overlap'; readonly overlap: Overlap }
  | { readonly kind: 'misplaced-feed'; readonly feed: MisplacedFeed };

/** Divides a run into its straight parts, or says why that cannot be. */
export function straightParts(run: Run, geometry: RunGeometry, fittings: readonly PlacedFitting[]): Division {
  const ends = lastEnds(run, geometry);
  const overlap = firstOverlap(fittings, ends.hardStop);
  if (overlap !== null) return { kind: 'overlap', overlap };
  const feedAt = centreFeedAt(run, geometry);
  if (feedAt !== null) {
    const inside = fittings.find((fitting) => fitting.from < feedAt && feedAt < fitting.to) ?? null;
    const outside = feedAt <= 0 || feedAt >= ends.hardStop;
    if (inside !== null || outside) return { kind: 'misplaced-feed', feed: { feedAt, inside } };
  }
  return { kind: 'parts', parts: divide(fittings, feedAt, ends) };
}

/** A centre feed without a stated distance stands in the middle of the run as drawn. */
export function centreFeedAt(run: Run, geometry: RunGeometry): Length | null {
  if (run.feed.kind !== 'centre') return null;
  return run.feed.at ?? Math.round(geometry.length / 2);
}

type Ends = Pick<LastPart, 'reach' | 'hardStop' | 'nominal'>;

/** `end` is measured like the last leg: from its corner, and on a one-leg branch from the parent's centre line. */
function lastEnds(run: Run, geometry: RunGeometry): Ends {
  const nominal = geometry.length;
  const legLength = run.legs.at(-1)?.length ?? 0;
  const corner = nominal - legLength;
  if (run.end === null) return { reach: nominal, hardStop: nominal, nominal };
  return { reach: corner + run.end.reach, hardStop: corner + run.end.hardStop, nominal };
}

function firstOverlap(fittings: readonly PlacedFitting[], hardStop: Length): Overlap | null {
  let before: PlacedFitting | null = null;
  for (const after of fittings) {
    const start = before?.to ?? 0;
    if (after.from < start) return { before, after, at: after.at, short: start - after.from };
    before = after;
  }
  const end = before?.to ?? 0;
  return end <= hardStop ? null : { before, after: null, at: before?.at ?? 0, short: end - hardStop };
}

function divide(fittings: readonly PlacedFitting[], feedAt: Length | null, ends: Ends): StraightParts {
  const inner: StraightPart[] = [];
  let from = 0;
  const close = (to: Length) => {
    if (to > from) inner.push({ from, to, towardsFeed: sideOf(from, feedAt) });
  };
  const cuts = fittings.map((fitting) => ({ from: fitting.from, to: fitting.to }));
  if (feedAt !== null) cuts.push({ from: feedAt, to: feedAt });
  for (const cut of cuts.sort((a, b) => a.from - b.from || a.to - b.to)) {
    close(cut.from);
    from = cut.to;
  }
  const last = { from, ...ends, reach: Math.max(ends.reach, from), towardsFeed: sideOf(from, feedAt) };
  return { inner, last, feedAt };
}

/** Left of a centre feed the feed is at a part's far end; everywhere else at its near end. */
function sideOf(from: Length, feedAt: Length | null): 'from' | 'to' {
  return feedAt !== null && from < feedAt ? 'to' : 'from';
}
