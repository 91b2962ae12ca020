import type { Length } from '../units/length.ts';
import type { IsBarred } from './cover-part.ts';
import type { SectionShop } from './section-shop.ts';
import { greatestCommonDivisor } from './stock-sums.ts';

/** Which lengths from a part's start can be covered, one mark for each multiple of `unit`. */
export interface CoverableLengths {
  readonly unit: Length;
  readonly marks: Uint8Array;
}

/** Above this, which only a part of more than a kilometre reaches, nothing is marked. */
const MOST_SLOTS = 90_000_000;

/** Reached with stock alone; reached with one cut behind; and a place with stock alone behind where a joint may stand. */
const STOCK = 1;
const CUT = 2;
const OPEN = 4;

/**
 * Every length up to `longest` that stock and at most one factory cut cover from a part's start, inner joints out of the bars:
 * what `coverPart` would find for each, whatever it costs, in one pass. null for a part too long to be marked.
 */
export function coverableLengths(
  shop: SectionShop,
  from: Length,
  longest: Length,
  isBarred: IsBarred,
): CoverableLengths | null {
  const unit = unitOf(shop);
  const slots = slotsOf(shop, longest);
  if (slots > MOST_SLOTS) return null;
  const marks = new Uint8Array(Math.max(0, slots) + 1);
  const stock = shop.stock.map((piece) => piece.length / unit);
  const endsCut = cutEnds(shop, unit, marks);
  marks[0] = STOCK;
  for (let slot = 0; slot <= slots; slot++) {
    if (endsCut(slot)) marks[slot] = marks[slot]! | CUT;
    const reached = marks[slot]!;
    if (reached === 0 || (slot > 0 && isBarred(from + slot * unit))) continue;
    if ((reached & STOCK) !== 0) marks[slot] = reached | OPEN;
    for (const length of stock) if (slot + length <= slots) marks[slot + length]! |= reached;
  }
  return { unit, marks };
}

/** How many lengths up to `longest` are told apart: what marking them costs. */
export function slotsOf(shop: SectionShop, longest: Length): number {
  return Math.floor(longest / unitOf(shop));
}

/** Whether any length from `shortest` to `longest` is covered. */
export function coversAny({ unit, marks }: CoverableLengths, shortest: Length, longest: Length): boolean {
  const last = Math.min(marks.length - 1, Math.floor(longest / unit));
  for (let slot = Math.max(0, Math.ceil(shortest / unit)); slot <= last; slot++) if (marks[slot] !== 0) return true;
  return false;
}

/** The nearest covered length on one side of `length`, itself left out, and never nought; null when there is none. */
export function nearestCovered(
  { unit, marks }: CoverableLengths,
  length: Length,
  side: 'shorter' | 'longer',
): Length | null {
  if (side === 'shorter') {
    for (let slot = Math.min(marks.length, Math.ceil(length / unit)) - 1; slot > 0; slot--) {
      if (marks[slot] !== 0) return slot * unit;
    }
    return null;
  }
  for (let slot = Math.floor(length / unit) + 1; slot < marks.length; slot++) if (marks[slot] !== 0) return slot * unit;
  return null;
}

function unitOf({ stock, cut }: SectionShop): Length {
  const lengths = [...stock.map((piece) => piece.length), ...(cut === null ? [] : [cut.min, cut.step])];
  return Math.max(1, lengths.reduce(greatestCommonDivisor, 0));
}

/**
 * Whether a cut that began at an open place may end at a slot. Asked for every slot in turn: places a whole number of steps
 * apart are counted on from the last open one, `min` behind.
 */
function cutEnds({ cut }: SectionShop, unit: Length, marks: Uint8Array): (slot: number) => boolean {
  if (cut === null) return () => false;
  const [shortest, step] = [cut.min / unit, cut.step / unit];
  const most = Math.floor((cut.max - cut.min) / cut.step);
  const stepsSinceOpen = new Int32Array(Math.min(step, marks.length)).fill(most + 1);
  let place = -1;
  return (slot) => {
    if (slot < shortest) return false;
    place = place + 1 === stepsSinceOpen.length ? 0 : place + 1;
    const isOpen = (marks[slot - shortest]! & OPEN) !== 0;
    const steps = isOpen ? 0 : Math.min(most, stepsSinceOpen[place]!) + 1;
    stepsSinceOpen[place] = steps;
    return steps <= most;
  };
}
