import type { Length } from '../units/length.ts';
import { type Covering, coverPart, type IsBarred } from './cover-part.ts';
import { coverableLengths, coversAny } from './coverable-lengths.ts';
import { cutsByCost } from './cuts-by-cost.ts';
import type { SectionShop } from './section-shop.ts';
import type { LastPart } from './straight-parts.ts';

export interface LastCovering extends Covering {
  readonly to: Length;
}

/**
 * The covering of the last part where it may end anywhere from `reach` to `hardStop`: least cost, then the end nearest to
 * `nominal`, then the tie-breaks of every part. Exact: ends are tried in the order of the least that they could cost with
 * no bar in the way, until none that is left could win; those that bars put out of reach are known beforehand.
 */
export function coverLastPart(shop: SectionShop, last: LastPart, isBarred: IsBarred): LastCovering | null {
  const nothingJoinsOn = last.from > 0 && last.reach === last.from && isBarred(last.from);
  if (nothingJoinsOn || last.reach === last.hardStop) return coverTo(shop, last, last.reach, isBarred);
  const canEnd = endTest(shop, last, isBarred);
  if (!canEnd(last.reach, last.hardStop)) return null;
  const offers = endOffers(shop, last);
  const tried = new Set<Length>();
  let best: LastCovering | null = null;
  for (let next = takeLeast(offers); next !== null; next = takeLeast(offers)) {
    if (best !== null && compareEnds(next, { cost: best.cost, away: awayFrom(last, best.to) }) > 0) return best;
    if (tried.has(next.to)) continue;
    tried.add(next.to);
    if (!canEnd(next.to, next.to)) continue;
    const found = coverTo(shop, last, next.to, isBarred);
    if (found !== null && (best === null || beats(found, best, last))) best = found;
  }
  return best;
}

/** Whether any covering ends between two places; a part too long to know it beforehand is tried end by end. */
function endTest(shop: SectionShop, last: LastPart, isBarred: IsBarred): (first: Length, end: Length) => boolean {
  const covered = coverableLengths(shop, last.from, last.hardStop - last.from, isBarred);
  if (covered === null) return () => true;
  return (first, end) => coversAny(covered, first - last.from, end - last.from);
}

function coverTo(shop: SectionShop, last: LastPart, to: Length, isBarred: IsBarred): LastCovering | null {
  const covering = coverPart(shop, { from: last.from, to, towardsFeed: last.towardsFeed }, isBarred);
  return covering && { ...covering, to };
}

/** An end, and the least that covering up to it could cost. */
interface EndOffer {
  readonly to: Length;
  readonly cost: number;
  readonly away: Length;
}

/** One stream of ends per sum of stock: the sum itself, and the sum with one cut, cheapest and nearest first. */
interface Stream {
  next: EndOffer | null;
  readonly rest: Iterator<EndOffer>;
}

function endOffers(shop: SectionShop, last: LastPart): Stream[] {
  const streams: Stream[] = [];
  const cheapest = cheapestSums(shop, last.hardStop - last.from);
  cheapest.forEach((cost, index) => {
    const stock = last.from + shop.sums.values[index]!;
    if (stock >= last.reach && stock <= last.hardStop)
      streams.push(opened([{ to: stock, cost, away: awayFrom(last, stock) }]));
    if (shop.cut !== null && stock + shop.cut.max >= last.reach && stock + shop.cut.min <= last.hardStop)
      streams.push(opened(cutEnds(shop, last, stock, cost)));
  });
  return streams;
}

function* cutEnds(shop: SectionShop, last: LastPart, stock: Length, cost: number): Generator<EndOffer> {
  const window = { from: last.reach - stock, to: last.hardStop - stock, best: last.nominal - stock };
  for (const cut of cutsByCost(shop, window)) {
    const to = stock + cut;
    yield { to, cost: cost + shop.cutCost(cut), away: awayFrom(last, to) };
  }
}

function opened(offers: Iterable<EndOffer>): Stream {
  const rest = offers[Symbol.iterator]();
  return { next: taken(rest), rest };
}

function taken(rest: Iterator<EndOffer>): EndOffer | null {
  const { done, value } = rest.next();
  return done === true ? null : value;
}

function takeLeast(streams: readonly Stream[]): EndOffer | null {
  let least: Stream | null = null;
  for (const stream of streams) {
    if (stream.next === null) continue;
    if (least === null || least.next === null || compareEnds(stream.next, least.next) < 0) least = stream;
  }
  if (least === null) return null;
  const offer = least.next;
  least.next = taken(least.rest);
  return offer;
}

/** Cheapest way to make up each sum of stock up to `longest`, bars left aside. */
export function cheapestSums(shop: SectionShop, longest: Length): number[] {
  const { sums, stock } = shop;
  const costs: number[] = [];
  for (let sum = 0; sum < sums.values.length && sums.values[sum]! <= longest; sum++) {
    let least = sum === 0 ? 0 : Number.POSITIVE_INFINITY;
    for (let kind = 0; kind < sums.kinds; kind++) {
      const rest = sums.less[sum * sums.kinds + kind]!;
      if (rest >= 0) least = Math.min(least, costs[rest]! + stock[kind]!.cost);
    }
    costs.push(least);
  }
  return costs;
}

function compareEnds(a: { cost: number; away: Length }, b: { cost: number; away: Length }): number {
  return a.cost - b.cost || a.away - b.away;
}

function awayFrom(last: LastPart, to: Length): Length {
  return Math.abs(to - last.nominal);
}

/** Two ends can be equally near, one short and one long: then the part's own tie-breaks decide. */
function beats(found: LastCovering, held: LastCovering, last: LastPart): boolean {
  return (
    (found.cost - held.cost ||
      awayFrom(last, found.to) - awayFrom(last, held.to) ||
      found.pieces.length - held.pieces.length ||
      cutsIn(found) - cutsIn(held) ||
      longerFirst(found, held, last.towardsFeed)) < 0
  );
}

function cutsIn(covering: Covering): number {
  return covering.pieces.filter((piece) => piece.cut).length;
}

function longerFirst(a: Covering, b: Covering, towardsFeed: 'from' | 'to'): number {
  const order = (covering: Covering) => (towardsFeed === 'from' ? covering.pieces : covering.pieces.toReversed());
  const other = order(b);
  for (const [index, piece] of order(a).entries()) {
    const difference = (other[index]?.length ?? 0) - piece.length;
    if (difference !== 0) return difference;
  }
  return 0;
}
