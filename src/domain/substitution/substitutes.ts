import { runGeometry } from '../layout/geometry.ts';
import { barAt, type JointBar, jointBars } from '../layout/joint-bars.ts';
import { placeFittings } from '../layout/place-fittings.ts';
import type { RunLayout } from '../layout/result.ts';
import { sayIn } from '../layout/say.ts';
import { straightParts } from '../layout/straight-parts.ts';
import { tapPlaces } from '../layout/tap-places.ts';
import type { Length } from '../units/length.ts';
import { arrangements, fills } from './arrangements.ts';
import { damagedAt, layoutAsReleased, type SubstitutionSite } from './site.ts';
import { type SubstituteWay, substituteWay } from './substitute-way.ts';

/** A way whose joint would stand where none may. */
export interface BarredWay {
  readonly lengths: readonly Length[];
  readonly at: Length;
  readonly bar: JointBar;
}

export interface Substitutes {
  /** May be chosen; the best first. */
  readonly open: readonly SubstituteWay[];
  /** May not: a tap-off that hangs already is in the way, or a hanger has no place. */
  readonly stopped: readonly SubstituteWay[];
  readonly barred: readonly BarredWay[];
  /** Where no joint may stand along the section. */
  readonly zones: readonly JointBar[];
  /** False: the straight part has its one factory cut elsewhere. */
  readonly cutToSpare: boolean;
  /** The run as it was released, by the type and the rules of today. */
  readonly before: RunLayout;
}

const MOST_PIECES = 6;
const MOST_WAYS = 8;
/** Ways of one number of pieces that are laid out; past it come other orders of the same lengths. */
const MOST_LAID = 24;

/**
 * The ways to fill the place of one section exactly with two or more, at most one factory cut in its straight part, each with
 * the run that comes of it. First those with fewest joints, then fewest tap-offs moved, fewest hangers changed, without a cut,
 * least cost, longer sections nearer the feed. Ways of more pieces are looked for until eight can be chosen. Lengths in
 * 1/80 mm.
 *
 * @example substitutes({ run, context, layout, index: 1, hanging: new Set() }).open[0]?.lengths
 */
export function substitutes(site: SubstitutionSite): Substitutes {
  const piece = damagedAt(site);
  const before = layoutAsReleased(site);
  const { bars, cutToSpare } = rulesAt(site);
  const { stockLengths, factoryCut } = site.context.type;
  const sold = { stockLengths, factoryCut: cutToSpare ? factoryCut : null };
  const [open, stopped, barred]: [SubstituteWay[], SubstituteWay[], BarredWay[]] = [[], [], []];
  for (let count = 2; count <= MOST_PIECES && open.length < MOST_WAYS; count++) {
    const laid: SubstituteWay[] = [];
    for (const lengths of arrangements(piece.to - piece.from, count, sold)) {
      const stuck = firstBarred(piece.from, lengths, bars);
      if (stuck !== null) barred.push({ lengths, ...stuck });
      const way = stuck === null ? substituteWay(site, lengths, before) : null;
      if (way !== null) laid.push(way);
      if (laid.length === MOST_LAID) break;
    }
    laid.sort(compareWays);
    open.push(...laid.filter(({ stops }) => stops.length === 0));
    stopped.push(...laid.filter(({ stops }) => stops.length > 0));
  }
  return {
    open: open.slice(0, MOST_WAYS),
    stopped: stopped.slice(0, MOST_WAYS),
    barred: barred.slice(0, MOST_WAYS),
    zones: bars.filter((bar) => bar.from < piece.to && bar.to > piece.from),
    cutToSpare,
    before,
  };
}

/** The one way of these sections, from the feed on; null where they do not fill the place or a joint may not stand. */
export function substituteBy(site: SubstitutionSite, lengths: readonly Length[]): SubstituteWay | null {
  const piece = damagedAt(site);
  const { bars, cutToSpare } = rulesAt(site);
  const { stockLengths, factoryCut } = site.context.type;
  const sold = { stockLengths, factoryCut: cutToSpare ? factoryCut : null };
  if (lengths.length > MOST_PIECES || !fills(lengths, piece.to - piece.from, sold)) return null;
  if (firstBarred(piece.from, lengths, bars) !== null) return null;
  return substituteWay(site, lengths, layoutAsReleased(site));
}

/** Where joints may not stand on this run, and whether the section's straight part may have a factory cut. */
function rulesAt(site: SubstitutionSite): { bars: readonly JointBar[]; cutToSpare: boolean } {
  const { run, context, layout, index } = site;
  const piece = damagedAt(site);
  const geometry = runGeometry(run, context.parent);
  const division = straightParts(run, geometry, placeFittings(run, geometry, context).placed);
  if (division.kind !== 'parts') return { bars: [], cutToSpare: false };
  const { inner, last } = division.parts;
  const part = [...inner, { from: last.from, to: last.hardStop }].find(
    ({ from, to }) => from <= piece.from && piece.to <= to,
  );
  const isOtherCut = ({ kind, from, to }: typeof piece, place: number) =>
    kind === 'cut' && place !== index && part !== undefined && part.from <= from && to <= part.to;
  const taps = tapPlaces(run, geometry, last.hardStop);
  return {
    bars: jointBars(run, context.type, taps, sayIn(context.project.units)),
    cutToSpare: !layout.pieces.some(isOtherCut),
  };
}

/** The first joint within the section that a bar keeps away. */
function firstBarred(
  from: Length,
  lengths: readonly Length[],
  bars: readonly JointBar[],
): { readonly at: Length; readonly bar: JointBar } | null {
  let at = from;
  for (const length of lengths.slice(0, -1)) {
    at += length;
    const bar = barAt(bars, at);
    if (bar !== null) return { at, bar };
  }
  return null;
}

function compareWays(a: SubstituteWay, b: SubstituteWay): number {
  const changed = ({ hangers }: SubstituteWay) => hangers.added.length + hangers.removed.length;
  const cuts = ({ layout }: SubstituteWay) => layout.pieces.filter(({ kind }) => kind === 'cut').length;
  const cost = ({ layout }: SubstituteWay) => layout.cost?.total ?? 0;
  return (
    a.lengths.length - b.lengths.length ||
    a.moves.length - b.moves.length ||
    changed(a) - changed(b) ||
    cuts(a) - cuts(b) ||
    cost(a) - cost(b) ||
    longerFirst(a.lengths, b.lengths)
  );
}

function longerFirst(a: readonly Length[], b: readonly Length[]): number {
  const place = a.findIndex((length, index) => length !== b[index]);
  return place < 0 ? 0 : (b[place] ?? 0) - (a[place] ?? 0);
}
