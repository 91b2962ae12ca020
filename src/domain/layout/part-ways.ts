import type { Length } from '../units/length.ts';
import { cheapestSums } from './cover-last-part.ts';
import type { CoverPiece, IsBarred } from './cover-part.ts';
import type { SectionShop } from './section-shop.ts';
import type { LastPart } from './straight-parts.ts';

/** One way to cover a part: its pieces in order from the end nearer the feed, and all that it is compared by. */
export interface PartWay {
  readonly pieces: readonly CoverPiece[];
  /** Pieces, cut surcharge and one joint a piece, minor units. */
  readonly cost: number;
  /** From the length drawn to where it ends. */
  readonly away: Length;
  readonly cuts: number;
}

/** Steps of the search at most: about a tenth of a second. */
export const MOST_STEPS = 3_000_000;

/**
 * The best `keep` ways to cover a part, best first, by the order in which coverings win: least cost, nearest to the length
 * drawn, fewer joints, without a cut before with one, longer pieces nearer the feed. Ways are different when their stock
 * pieces or the place of the cut among them are; how long a cut is makes no other way, else a free end would only ever offer
 * the winner again, a sixteenth longer. Exact; null when there are too many ways to go through them all. The part is
 * measured from its end nearer the feed.
 */
export function partWays(
  shop: SectionShop,
  part: LastPart,
  isBarred: IsBarred,
  keep: number,
  mostSteps: number = MOST_STEPS,
): readonly PartWay[] | null {
  if (shop.sums.cutShort) return null;
  const search: Search = { shop, part, isBarred, keep, mostSteps, count: countFor(shop, part.hardStop - part.from) };
  const best = [...(waysOn(search, 0)[0] ?? [])];
  const offers = cutOffers(search);
  if (offers === null) return null;
  let steps = 0;
  for (const { cut, least } of offers) {
    if (best.length === keep && least > best[keep - 1]!.cost) break;
    steps += 2 * search.count * shop.sums.kinds;
    if (steps > mostSteps) return null;
    for (const way of waysWithCut(search, cut)) enter(best, way, keep);
  }
  return best.map(told);
}

interface Search {
  readonly shop: SectionShop;
  readonly part: LastPart;
  readonly isBarred: IsBarred;
  readonly keep: number;
  readonly mostSteps: number;
  /** Sums of stock that are no longer than the part may be. */
  readonly count: number;
}

/** A piece and the way on after it; the last of a chain is an end, without length. */
interface Way {
  readonly length: Length;
  readonly cut: boolean;
  readonly rest: Way | null;
  readonly cost: number;
  readonly away: Length;
  /** Twice the pieces, plus one for a cut: fewer joints first, then no cut. */
  readonly tie: number;
}

/** For each sum of stock: the best ways on with stock alone from there, after so much of a cut as is behind. */
function waysOn({ shop, part, isBarred, keep, count }: Search, behind: Length): readonly (readonly Way[])[] {
  const { sums, stock } = shop;
  const ways: Way[][] = new Array(count).fill(NO_WAY);
  for (let sum = count - 1; sum >= 0; sum--) {
    const at = part.from + behind + sums.values[sum]!;
    if (at > part.hardStop) continue;
    const here: Way[] = [];
    if (at >= part.reach) here.push(endAt(part, at));
    if (mayJoin(part, at, isBarred)) {
      for (let kind = 0; kind < sums.kinds; kind++) {
        const next = sums.more[sum * sums.kinds + kind]!;
        if (next < 0 || next >= count) continue;
        const { length, cost } = stock[kind]!;
        for (const rest of ways[next]!) enter(here, before(length, false, cost, rest), keep);
      }
    }
    if (here.length > 0) ways[sum] = here;
  }
  return ways;
}

/** The best ways over the whole part that take one cut of just this length. */
function waysWithCut(search: Search, cut: Length): readonly Way[] {
  const { shop, part, isBarred, keep, count } = search;
  const { sums, stock } = shop;
  const after = waysOn(search, cut);
  const cost = shop.cutCost(cut);
  const ways: Way[][] = new Array(count).fill(NO_WAY);
  for (let sum = count - 1; sum >= 0; sum--) {
    if (!mayJoin(part, part.from + sums.values[sum]!, isBarred)) continue;
    const here: Way[] = [];
    for (let kind = 0; kind < sums.kinds; kind++) {
      const next = sums.more[sum * sums.kinds + kind]!;
      if (next < 0 || next >= count) continue;
      const piece = stock[kind]!;
      for (const rest of ways[next]!) enter(here, before(piece.length, false, piece.cost, rest), keep);
    }
    for (const rest of after[sum]!) enter(here, before(cut, true, cost, rest), keep);
    if (here.length > 0) ways[sum] = here;
  }
  return ways[0]!;
}

const NO_WAY: Way[] = [];

/** The run's very start has no joint; a fitting's face has one as soon as a piece joins on. */
function mayJoin(part: LastPart, at: Length, isBarred: IsBarred): boolean {
  if (at !== part.from) return !isBarred(at);
  return at === 0 || part.reach > at || !isBarred(at);
}

function endAt(part: LastPart, at: Length): Way {
  return { length: 0, cut: false, rest: null, cost: 0, away: Math.abs(at - part.nominal), tie: 0 };
}

function before(length: Length, cut: boolean, cost: number, rest: Way): Way {
  return { length, cut, rest, cost: cost + rest.cost, away: rest.away, tie: rest.tie + (cut ? 3 : 2) };
}

/** Puts a way into its place among the best so far; one that differs from another in its cut's length alone takes or leaves its place. */
function enter(best: Way[], way: Way, keep: number): void {
  if (best.length === keep && order(way, best[keep - 1]!) >= 0) return;
  const twin = best.findIndex((held) => isSameWay(held, way));
  if (twin >= 0) {
    if (order(way, best[twin]!) >= 0) return;
    best.splice(twin, 1);
  }
  const place = best.findIndex((held) => order(way, held) < 0);
  best.splice(place < 0 ? best.length : place, 0, way);
  if (best.length > keep) best.pop();
}

function order(a: Way, b: Way): number {
  return a.cost - b.cost || a.away - b.away || a.tie - b.tie || longerFirst(a, b);
}

function longerFirst(a: Way | null, b: Way | null): number {
  while (a !== null && b !== null) {
    if (a.length !== b.length) return b.length - a.length;
    [a, b] = [a.rest, b.rest];
  }
  return 0;
}

function isSameWay(a: Way | null, b: Way | null): boolean {
  while (a !== null && b !== null) {
    if (a.cut !== b.cut || (!a.cut && a.length !== b.length)) return false;
    [a, b] = [a.rest, b.rest];
  }
  return a === b;
}

interface CutOffer {
  readonly cut: Length;
  /** The least that a covering with this cut could cost, bars left aside. */
  readonly least: number;
}

/** Every cut with which the part can be made up at all, the one that could be cheapest first. */
function cutOffers({ shop, part, count, mostSteps }: Search): readonly CutOffer[] | null {
  const { cut, sums, stock } = shop;
  if (cut === null) return [];
  const cheapest = cheapestSums(shop, part.hardStop - part.from);
  const least = new Map<Length, number>();
  const listed = new Set(stock.map(({ length }) => length));
  let steps = 0;
  for (let sum = 0; sum < count; sum++) {
    const rest = part.reach - part.from - sums.values[sum]!;
    const first = Math.max(0, Math.ceil((rest - cut.min) / cut.step));
    const last = Math.floor((Math.min(cut.max, rest + part.hardStop - part.reach) - cut.min) / cut.step);
    steps += Math.max(0, last - first + 1);
    if (steps > mostSteps) return null;
    for (let k = first; k <= last; k++) {
      const length = cut.min + k * cut.step;
      // As long as a stock piece: that is the same way, and never cheaper.
      if (listed.has(length)) continue;
      const cost = cheapest[sum]! + shop.cutCost(length);
      if (cost < (least.get(length) ?? Number.POSITIVE_INFINITY)) least.set(length, cost);
    }
  }
  return [...least].map(([length, cost]) => ({ cut: length, least: cost })).sort((a, b) => a.least - b.least);
}

function countFor({ sums }: SectionShop, longest: Length): number {
  const beyond = sums.values.findIndex((value) => value > longest);
  return beyond < 0 ? sums.values.length : beyond;
}

function told(way: Way): PartWay {
  const pieces: CoverPiece[] = [];
  for (let at: Way = way; at.rest !== null; at = at.rest) pieces.push({ length: at.length, cut: at.cut });
  return { pieces, cost: way.cost, away: way.away, cuts: way.tie % 2 };
}
