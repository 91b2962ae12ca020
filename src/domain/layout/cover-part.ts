import type { Length } from '../units/length.ts';
import { isCuttable, type SectionShop } from './section-shop.ts';
import type { StraightPart } from './straight-parts.ts';

/** Straight pieces in order from the part's start. `cost` is pieces, cut surcharge and one joint a piece. */
export interface Covering {
  readonly pieces: readonly CoverPiece[];
  readonly cost: number;
}

export interface CoverPiece {
  readonly length: Length;
  readonly cut: boolean;
}

export type IsBarred = (at: Length) => boolean;

/**
 * The covering of one straight part that wins: least cost, then fewer joints, then without a cut before with one, then
 * longer pieces nearer the feed; null when none keeps every inner joint out of the bars. Exact: a dynamic program over all
 * places that stock pieces reach from either end, joined by at most one factory cut.
 */
export function coverPart(shop: SectionShop, part: StraightPart, isBarred: IsBarred): Covering | null {
  if (part.towardsFeed === 'from') return coverFrom(shop, part.from, part.to, isBarred);
  const mirrored = coverFrom(shop, part.from, part.to, (at) => isBarred(part.from + part.to - at));
  return mirrored && { ...mirrored, pieces: mirrored.pieces.toReversed() };
}

/** Best cost of each state, and the tie-break after it: twice the pieces, plus one for a cut. */
interface Table {
  readonly cost: Float64Array;
  readonly tie: Int32Array;
}

function coverFrom(shop: SectionShop, from: Length, to: Length, isBarred: IsBarred): Covering | null {
  const length = to - from;
  if (length === 0) return { pieces: [], cost: 0 };
  const count = countUpTo(shop.sums.values, length);
  const stockOnly = stockTable(shop, count, length, (left) => isBarred(to - left));
  if (shop.cut === null) return walkStock(shop, stockOnly, length);
  const open = cutTable(shop, count, length, stockOnly, (done) => isBarred(from + done));
  return walkOpen(shop, open, stockOnly, length);
}

/** How many of the ascending values are at most `limit`. */
function countUpTo(values: readonly Length[], limit: Length): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** For each sum: the best way to cover that much up to the part's end with stock alone, starting at an allowed joint. */
function stockTable(shop: SectionShop, count: number, length: Length, barred: IsBarred): Table {
  const { sums, stock } = shop;
  const table = emptyTable(count);
  table.cost[0] = 0;
  for (let sum = 1; sum < count; sum++) {
    const left = sums.values[sum]!;
    if (left !== length && barred(left)) continue;
    for (let kind = 0; kind < sums.kinds; kind++) {
      const rest = sums.less[sum * sums.kinds + kind]!;
      if (rest >= 0) offer(table, sum, table.cost[rest]! + stock[kind]!.cost, table.tie[rest]! + 2);
    }
  }
  return table;
}

/** For each sum: the best way on from there, after that much stock, with the part's one cut still to spend or to spare. */
function cutTable(shop: SectionShop, count: number, length: Length, stockOnly: Table, barred: IsBarred): Table {
  const { sums, stock } = shop;
  const table = emptyTable(count);
  for (let sum = count - 1; sum >= 0; sum--) {
    const done = sums.values[sum]!;
    if (done === length) {
      table.cost[sum] = 0;
      continue;
    }
    if (done !== 0 && barred(done)) continue;
    for (let kind = 0; kind < sums.kinds; kind++) {
      const next = sums.more[sum * sums.kinds + kind]!;
      if (next >= 0 && next < count) offer(table, sum, table.cost[next]! + stock[kind]!.cost, table.tie[next]! + 2);
    }
    eachCut(shop, length - done, count, (cut, rest) => {
      offer(table, sum, stockOnly.cost[rest]! + shop.cutCost(cut), stockOnly.tie[rest]! + 3);
    });
  }
  return table;
}

/**
 * Every cut that leaves a sum of stock for the rest of `left`, with the place of that sum. A cut as long as a stock length
 * is never offered: the stock piece costs no more and keeps the cut to spare.
 */
function eachCut(shop: SectionShop, left: Length, count: number, take: (cut: Length, rest: number) => void): void {
  const { cut, sums } = shop;
  if (cut === null) return;
  for (let rest = countUpTo(sums.values, left - cut.min) - 1; rest >= 0; rest--) {
    const length = left - sums.values[rest]!;
    if (length > cut.max) return;
    if (rest >= count || !isCuttable(cut, length)) continue;
    if (!shop.stock.some((piece) => piece.length === length)) take(length, rest);
  }
}

function walkStock(shop: SectionShop, stockOnly: Table, length: Length): Covering | null {
  const start = countUpTo(shop.sums.values, length) - 1;
  const cost = stockOnly.cost[start]!;
  if (shop.sums.values[start] !== length || cost === Number.POSITIVE_INFINITY) return null;
  return { pieces: stockPieces(shop, stockOnly, start), cost };
}

/** Longest first at every step among those that keep the best cost and tie: longer pieces nearer the start. */
function stockPieces(shop: SectionShop, table: Table, start: number): CoverPiece[] {
  const { sums, stock } = shop;
  const pieces: CoverPiece[] = [];
  for (let sum = start; sum > 0; ) {
    const kind = stock.findIndex(({ cost }, candidate) => {
      const rest = sums.less[sum * sums.kinds + candidate]!;
      return rest >= 0 && isBest(table, sum, table.cost[rest]! + cost, table.tie[rest]! + 2);
    });
    pieces.push({ length: stock[kind]!.length, cut: false });
    sum = sums.less[sum * sums.kinds + kind]!;
  }
  return pieces;
}

function walkOpen(shop: SectionShop, open: Table, stockOnly: Table, length: Length): Covering | null {
  const total = open.cost[0]!;
  if (total === Number.POSITIVE_INFINITY) return null;
  const pieces: CoverPiece[] = [];
  for (let sum = 0; shop.sums.values[sum] !== length; ) {
    const step = bestStep(shop, open, stockOnly, sum, length);
    pieces.push({ length: step.length, cut: step.cut });
    if (step.cut) return { pieces: [...pieces, ...stockPieces(shop, stockOnly, step.next)], cost: total };
    sum = step.next;
  }
  return { pieces, cost: total };
}

function bestStep(shop: SectionShop, open: Table, stockOnly: Table, sum: number, length: Length) {
  const { sums, stock } = shop;
  const count = open.cost.length;
  let best = { length: 0, cut: false, next: -1 };
  stock.forEach((piece, kind) => {
    const next = sums.more[sum * sums.kinds + kind]!;
    if (next < 0 || next >= count || piece.length <= best.length) return;
    if (isBest(open, sum, open.cost[next]! + piece.cost, open.tie[next]! + 2)) {
      best = { length: piece.length, cut: false, next };
    }
  });
  eachCut(shop, length - sums.values[sum]!, count, (cut, rest) => {
    if (cut <= best.length) return;
    if (isBest(open, sum, stockOnly.cost[rest]! + shop.cutCost(cut), stockOnly.tie[rest]! + 3)) {
      best = { length: cut, cut: true, next: rest };
    }
  });
  return best;
}

function emptyTable(count: number): Table {
  return { cost: new Float64Array(count).fill(Number.POSITIVE_INFINITY), tie: new Int32Array(count) };
}

function offer(table: Table, at: number, cost: number, tie: number): void {
  const held = table.cost[at]!;
  if (cost > held || (cost === held && tie >= table.tie[at]!)) return;
  table.cost[at] = cost;
  table.tie[at] = tie;
}

function isBest(table: Table, at: number, cost: number, tie: number): boolean {
  return cost === table.cost[at] && tie === table.tie[at];
}
