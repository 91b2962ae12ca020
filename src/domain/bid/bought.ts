import type { Bid } from '../model.ts';
import type { Quote } from './bid-entries.ts';
import { holds, isBareLack, isFor } from './held.ts';
import { levelQuote } from './level-quotes.ts';
import type { HeldLine, PricedLine, PricedThing } from './result.ts';

/** What the material is made of: the takeoff at its prices, a sum that was entered, and the chosen quotes. */
export interface Bought {
  /** Of the priced takeoff, what no chosen quote holds. */
  readonly priced: readonly PricedLine[];
  /** And what a chosen quote holds: it is in the price by the quote alone. */
  readonly held: readonly HeldLine[];
  readonly chosen: readonly Quote[];
  /** Minor units. */
  readonly own: number;
  readonly quoted: readonly { readonly quote: Quote; readonly amount: number }[];
  /** Spares at their prices, whatever stands for them. */
  readonly spares: readonly PricedThing[];
}

/**
 * The material of a bid. A chosen quote takes the place of every thing of the takeoff that it holds (`holds`); what it lacks
 * without a plug stays at the prices of the types. Spares by rule stand beside it: a quote is for
 * what the work takes. Minor units.
 *
 * Example: a chosen quote with a line for tap-offs leaves sections, joints and hangers at the prices of their types.
 */
export function boughtMaterial(bid: Bid, priced: readonly PricedLine[], spares: readonly PricedThing[]): Bought {
  const chosen = bid.quotes.filter(({ chosen: isChosen, goesTo }) => isChosen && goesTo === 'materials');
  const held = priced.flatMap((line) => heldBy(chosen, line));
  const left = priced.filter(({ key }) => !chosen.some((quote) => holds(quote, key)));
  const own = bid.materials ?? left.reduce((total, { amount }) => total + (amount ?? 0), 0);
  return {
    priced: left,
    held,
    chosen,
    own,
    quoted: chosen.map((quote) => ({ quote, amount: offered(quote) })),
    spares,
  };
}

/** Quoted amounts and plugs. Freight that is left out has a line of its own in the bid. */
export function offered(quote: Quote): number {
  const { quoted, plugs } = levelQuote(quote);
  return quoted + plugs;
}

function heldBy(chosen: readonly Quote[], line: PricedLine): readonly HeldLine[] {
  const by = chosen.find((quote) => holds(quote, line.key));
  if (by === undefined) return [];
  return [{ ...line, quote: by.id, isNamed: by.lines.some((own) => isFor(own.item, line.key) && !isBareLack(own)) }];
}
