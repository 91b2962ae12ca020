import type { Bid } from '../model.ts';
import type { Quote, QuotedItem, UnitItem } from './bid-entries.ts';
import { levelQuote } from './level-quotes.ts';
import type { PricedLine, PricedThing } from './result.ts';

/** What the material is made of: the takeoff at its prices, a sum that was entered, and the chosen quotes. */
export interface Bought {
  /** Of the priced takeoff, what no chosen quote holds. */
  readonly priced: readonly PricedLine[];
  readonly chosen: readonly Quote[];
  /** Minor units. */
  readonly own: number;
  readonly quoted: readonly { readonly quote: Quote; readonly amount: number }[];
  /** Spares at their prices, whatever stands for them. */
  readonly spares: readonly PricedThing[];
}

/**
 * The material of a bid. A chosen quote takes the place of every thing of the takeoff that it names, whether it prices,
 * includes or lacks it; one with a line for the lot takes the place of all. Spares by rule stand beside it: a quote is for
 * what the work takes. Minor units.
 *
 * Example: a chosen quote with a line for tap-offs leaves sections, joints and hangers at the prices of their types.
 */
export function boughtMaterial(bid: Bid, priced: readonly PricedLine[], spares: readonly PricedThing[]): Bought {
  const chosen = bid.quotes.filter(({ chosen: isChosen, goesTo }) => isChosen && goesTo === 'materials');
  const left = priced.filter(({ key }) => !chosen.some((quote) => holds(quote, key)));
  const own = bid.materials ?? left.reduce((total, { amount }) => total + (amount ?? 0), 0);
  return { priced: left, chosen, own, quoted: chosen.map((quote) => ({ quote, amount: offered(quote) })), spares };
}

/** What a joint is made of, by the piece: a quote that names one of these holds the whole kit. */
const IN_A_KIT: readonly QuotedItem[] = ['joint-kit', 'clamp', 'contact-set'];

export function holds({ lines }: Quote, item: UnitItem): boolean {
  return lines.some(
    (line) => line.item === 'lot' || line.item === item || (item === 'joint-kit' && IN_A_KIT.includes(line.item)),
  );
}

/** Quoted amounts and plugs. Freight that is left out has a line of its own in the bid. */
export function offered(quote: Quote): number {
  const { quoted, plugs } = levelQuote(quote);
  return quoted + plugs;
}
