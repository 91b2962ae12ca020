import type { BuswayTypeDocument, JobDocument, RunDocument } from '../../../src/document/job-document.ts';
import { isInside, type RunShape, runShape, type Stretch, typeOf, units } from './run-shape.ts';

/**
 * The covering that wins, by writing out every covering there is: every order of stock lengths, with at most one factory
 * cut of every allowed length at every place, in each straight part. Written from the job document's page alone; slow,
 * for small runs. Null: there is none.
 */
export interface ReferenceCovering {
  readonly sections: readonly Section[];
  readonly joints: readonly number[];
}

interface Section {
  readonly from: number;
  readonly to: number;
  readonly kind: 'stock' | 'cut' | 'elbow' | 'tee';
  readonly hand: string | null;
}

export interface Choice {
  readonly cost: number;
  readonly offBy: number;
  readonly joints: number;
  readonly cuts: number;
  readonly pieces: readonly Piece[];
}

interface Piece {
  readonly length: number;
  readonly cut: boolean;
}

export function referenceCovering(job: JobDocument, run: RunDocument): ReferenceCovering | null {
  const shape = runShape(job, run);
  if (shape.feedJoints.some((at) => isInside(shape.jointBars, at))) return null;
  const shop = shopOf(typeOf(job, run), jointCost(job, typeOf(job, run)));
  const choices: Choice[] = [];
  for (const [i, part] of shape.parts.entries()) {
    const best = bestOf(shop, shape, part, i === shape.parts.length - 1 ? shape.ends : null);
    if (best === null) return null;
    choices.push(best);
  }
  return placed(shape, choices);
}

/** A covering of the whole run: its sections as placed, and its cost without the fittings and the feed's own joint. */
export interface RankedReference {
  readonly sections: ReferenceCovering['sections'];
  readonly cost: number;
}

/**
 * The best few coverings of a whole run out of every combination of every covering of its parts, by the order in which
 * coverings win; of those that differ in the length of a cut alone, the best. Null: there are more than `most` to write out.
 */
export function referenceRanking(
  job: JobDocument,
  run: RunDocument,
  count: number,
  most: number,
): readonly RankedReference[] | null {
  const shape = runShape(job, run);
  if (shape.feedJoints.some((at) => isInside(shape.jointBars, at))) return [];
  const shop = shopOf(typeOf(job, run), jointCost(job, typeOf(job, run)));
  const each = shape.parts.map((part, i) => choicesOf(shop, shape, part, i === shape.parts.length - 1));
  if (each.reduce((product, choices) => product * choices.length, 1) > most) return null;
  const whole = each.reduce<(readonly Choice[])[]>(
    (begun, choices) => begun.flatMap((before) => choices.map((choice) => [...before, choice])),
    [[]],
  );
  const fromFeed = (choices: readonly Choice[]) => [
    ...choices.filter((_, i) => isBeforeFeed(shape, i)).reverse(),
    ...choices.filter((_, i) => !isBeforeFeed(shape, i)),
  ];
  const ranked = whole
    .map((choices) => ({ choices, sum: summed(fromFeed(choices), shape) }))
    .sort((a, b) => (precedes(a.sum, b.sum, 'first') ? -1 : 1));
  const seen = new Set<string>();
  const best: RankedReference[] = [];
  for (const { choices, sum } of ranked) {
    const key = choices.map(({ pieces }) => pieces.map(({ length, cut }) => (cut ? 'cut' : length)).join()).join(';');
    if (seen.has(key)) continue;
    seen.add(key);
    best.push({ sections: placed(shape, choices).sections, cost: sum.cost });
    if (best.length === count) break;
  }
  return best;
}

/** Coverings of one part. A cut as long as a stock length makes the same lengths and is never cheaper. */
function choicesOf(shop: Shop, shape: RunShape, part: Stretch, isLast: boolean): readonly Choice[] {
  const choices: Choice[] = [];
  everyCovering(shop, shape, part, isLast ? shape.ends : null, (pieces, end) => {
    if (pieces.some(({ length, cut }) => cut && shop.stock.includes(length))) return;
    choices.push(valued(shop, part, pieces, end));
  });
  return choices;
}

function isBeforeFeed(shape: RunShape, part: number): boolean {
  return shape.parts[part]!.to <= shape.feedAt;
}

function summed(choices: readonly Choice[], shape: RunShape): Choice {
  const before = shape.parts.filter((part) => part.to <= shape.feedAt).length;
  const add = (value: (choice: Choice) => number) => choices.reduce((sum, choice) => sum + value(choice), 0);
  return {
    cost: add(({ cost }) => cost),
    offBy: choices.at(-1)!.offBy,
    joints: add(({ joints }) => joints),
    cuts: add(({ cuts }) => cuts),
    pieces: choices.flatMap(({ pieces }, i) => (i < before ? pieces.toReversed() : pieces)),
  };
}

function bestOf(shop: Shop, shape: RunShape, part: Stretch, freeEnd: Stretch | null): Choice | null {
  const nearer = part.to <= shape.feedAt ? 'last' : 'first';
  let best: Choice | null = null;
  everyCovering(shop, shape, part, freeEnd, (pieces, end) => {
    const choice = valued(shop, part, pieces, end);
    if (best === null || precedes(choice, best, nearer)) best = choice;
  });
  return best;
}

export interface Shop {
  readonly stock: readonly number[];
  readonly cuts: readonly number[];
  readonly priceOf: (length: number) => number;
  readonly cutSurcharge: number;
  readonly joint: number;
}

export function shopOf(type: BuswayTypeDocument, joint: number): Shop {
  const listed = new Map((type.prices?.sections ?? []).map(({ lengthMm, price }) => [units(lengthMm), price]));
  return {
    stock: [...new Set(type.stockLengthsMm.map(units))],
    cuts: cutLengths(type),
    priceOf: (length) => listed.get(length) ?? ((type.prices?.sectionPerM ?? 0) * length) / 80_000,
    cutSurcharge: type.prices?.cutSurcharge ?? 0,
    joint,
  };
}

function cutLengths(type: BuswayTypeDocument): number[] {
  if (type.factoryCut === null) return [];
  const { minMm, maxMm, stepMm } = type.factoryCut;
  const lengths: number[] = [];
  for (let length = units(minMm); length <= units(maxMm); length += units(stepMm)) lengths.push(length);
  return lengths;
}

/** Kit and labour of one joint: likely hours × Σ(n·rate)/Σ(n·effectiveness). */
export function jointCost(job: JobDocument, type: BuswayTypeDocument): number {
  const crew = job.labourBook?.crew ?? [];
  const productive = crew.reduce((sum, one) => sum + one.number * one.effectiveness, 0);
  const paid = crew.reduce((sum, one) => sum + one.number * one.ratePerHour, 0);
  const hours = job.labourBook?.activities.joint?.likely ?? 0;
  return (type.prices?.jointKit ?? 0) + (productive > 0 ? (hours * paid) / productive : 0);
}

/** A section or a fitting joins on wherever it starts, but for the very first of the run: what joins there is the feed. */
function everyCovering(
  shop: Shop,
  shape: RunShape,
  part: Stretch,
  freeEnd: Stretch | null,
  take: (pieces: readonly Piece[], end: number) => void,
): void {
  const ends = freeEnd ?? { from: part.to, to: part.to };
  const mayJoin = (at: number) => at === 0 || !isInside(shape.jointBars, at);
  const pieces: Piece[] = [];
  const goOn = (at: number, cutUsed: boolean): void => {
    const joinsOn = mayJoin(at);
    if (at >= ends.from && at <= ends.to && (freeEnd !== null || joinsOn)) take([...pieces], at);
    if (!joinsOn) return;
    for (const length of shop.stock) step(at, { length, cut: false }, cutUsed);
    if (!cutUsed) for (const length of shop.cuts) step(at, { length, cut: true }, true);
  };
  const step = (at: number, piece: Piece, cutUsed: boolean): void => {
    if (at + piece.length > ends.to) return;
    pieces.push(piece);
    goOn(at + piece.length, cutUsed);
    pieces.pop();
  };
  goOn(part.from, false);
}

function valued(shop: Shop, part: Stretch, pieces: readonly Piece[], end: number): Choice {
  const joints = pieces.length - (pieces.length > 0 && part.from === 0 ? 1 : 0);
  const cuts = pieces.filter((piece) => piece.cut).length;
  const bought = pieces.reduce((sum, piece) => sum + shop.priceOf(piece.length), 0);
  const cost = bought + cuts * shop.cutSurcharge + joints * shop.joint;
  return { cost, offBy: Math.abs(end - part.to), joints, cuts, pieces };
}

/**
 * Least cost; at a free end the nearest to its length; fewer joints; no cut before a cut; longer pieces nearer the feed,
 * which stands at the first of the pieces, or at the last of those before a centre feed.
 */
export function precedes(a: Choice, b: Choice, nearer: 'first' | 'last'): boolean {
  const keys = [a.cost - b.cost, a.offBy - b.offBy, a.joints - b.joints, a.cuts - b.cuts];
  for (const key of keys) if (key !== 0) return key < 0;
  const [mine, others] = nearer === 'first' ? [a.pieces, b.pieces] : [a.pieces.toReversed(), b.pieces.toReversed()];
  for (const [i, piece] of mine.entries()) {
    const other = others[i];
    if (other !== undefined && other.length !== piece.length) return piece.length > other.length;
  }
  return false;
}

function placed(shape: RunShape, choices: readonly Choice[]): ReferenceCovering {
  const sections: Section[] = shape.fittings.map(({ from, to, kind, hand }) => ({ from, to, kind, hand }));
  for (const [i, part] of shape.parts.entries()) {
    let at = part.from;
    for (const piece of choices[i]!.pieces) {
      sections.push({ from: at, to: at + piece.length, kind: piece.cut ? 'cut' : 'stock', hand: null });
      at += piece.length;
    }
  }
  sections.sort((a, b) => a.from - b.from);
  const meeting = sections.map(({ from }) => from).filter((from) => from > 0);
  return { sections, joints: [...shape.feedJoints, ...meeting].sort((a, b) => a - b) };
}
