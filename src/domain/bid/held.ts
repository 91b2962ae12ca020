import type { Quote, QuotedItem, QuoteLine, UnitItem } from './bid-entries.ts';

/** What a joint is made of, by the piece: a quote that names one of these is for the kit. */
const KIT_PARTS: readonly QuotedItem[] = ['clamp', 'contact-set'];
const IN_A_KIT: readonly QuotedItem[] = ['joint-kit', ...KIT_PARTS];

/** Whether a line of a quote or of the takeoff is for a thing that has a price of one. */
export function isFor(line: string, item: UnitItem): boolean {
  return line === item || (item === 'joint-kit' && IN_A_KIT.some((part) => part === line));
}

/**
 * Whether a chosen quote takes the place of a thing of the takeoff: it prices or includes it, a plug stands in for it, or
 * the quote is for the lot and does not lack it. What it only lacks, without a plug, is left to our own prices; of a joint
 * kit that must be all of it, since a kit that is priced as one cannot be bought in part.
 *
 * Example: the lot, lacking tap-offs without a plug, holds sections, joints and hangers, and no tap-offs.
 */
export function holds(quote: Quote, item: UnitItem): boolean {
  const named = quote.lines.filter((line) => isFor(line.item, item));
  if (named.some((line) => !isBareLack(line))) return true;
  return quote.lines.some((line) => line.item === 'lot') && !lacksWholly(named, item);
}

/** Whether a quote names a thing, and only to say that it lacks it. */
export function leaves(quote: Quote, item: UnitItem): boolean {
  return quote.lines.some((line) => isFor(line.item, item)) && !holds(quote, item);
}

/**
 * Of a joint kit that a quote takes the place of by one of its parts, the parts that it says nothing of: a kit that is priced
 * as one cannot be bought in part.
 *
 * Example: of a quote for clamps alone, contact sets.
 */
export function silentKitParts(quote: Quote): readonly QuotedItem[] {
  const names = (item: QuotedItem) => quote.lines.some((line) => line.item === item);
  if (names('joint-kit') || names('lot') || !holds(quote, 'joint-kit')) return [];
  return KIT_PARTS.filter((part) => !names(part));
}

/** Not offered, and nothing stands in for it. */
export function isBareLack({ state, amount }: QuoteLine): boolean {
  return state === 'lacks' && amount === null;
}

function lacksWholly(named: readonly QuoteLine[], item: UnitItem): boolean {
  if (item !== 'joint-kit') return named.length > 0;
  const has = (part: QuotedItem) => named.some((line) => line.item === part);
  return has('joint-kit') || (has('clamp') && has('contact-set'));
}
