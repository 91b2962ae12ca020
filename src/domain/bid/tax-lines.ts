import type { Bid } from '../model.ts';
import type { Quote, Taxable } from './bid-entries.ts';
import { percentLine, sumOfLines } from './bid-line.ts';
import { levelQuote } from './level-quotes.ts';
import type { BidLine, BidLineName } from './result.ts';

/** A tax with the lines of the bid that it is reckoned on. */
interface Tax {
  readonly label: string | null;
  readonly percent: number;
  readonly on: readonly BidLineName[];
}

/**
 * Taxes by category, each on the lines it names: material counts with its waste, spares and escalation. What a chosen quote holds
 * with the tax in it is left out of the base with its escalation, so that nothing is taxed twice. Minor units, each line rounded once.
 *
 * Source: the trade's build-up (domain rules §5); which lines are taxed is for the local law and the owner's exemption.
 * Example: 7 % on 103,000 of material of which 3,000 were quoted with tax is 7 % of 100,000.
 */
export function taxLines(bid: Bid, lines: readonly BidLine[]): readonly BidLine[] {
  return taxesOf(bid).map(({ label, percent, on }) => {
    const without = taxedBefore(bid, on);
    const isPlain =
      label === null && without === 0 && !lines.some(({ line }) => MATERIAL.includes(line) && line !== 'materials');
    const present = on.filter((name) => lines.some(({ line }) => line === name));
    const base = isPlain ? {} : { on: present, ...(without === 0 ? {} : { less: without }) };
    return percentLine('tax', percent, sumOfLines(lines, on) - without, base, label);
  });
}

/** The lines that are material to a tax. */
const MATERIAL: readonly BidLineName[] = ['materials', 'waste', 'spares', 'escalation'];

function taxesOf(bid: Bid): readonly Tax[] {
  const plain = bid.taxPercent === null ? [] : [{ label: null, percent: bid.taxPercent, on: expanded(['materials']) }];
  return [...plain, ...bid.taxes.map(({ name, percent, on }) => ({ label: name, percent, on: expanded(on) }))];
}

function expanded(on: readonly Taxable[]): readonly BidLineName[] {
  return on.flatMap((line): readonly BidLineName[] => (line === 'materials' ? MATERIAL : [line]));
}

/** What rises until delivery carries its own part of the tax along. */
function escalatedQuote({ escalationPercent }: Bid, quote: Quote): number {
  const { quoted } = levelQuote(quote);
  if (quote.firm || quote.goesTo !== 'materials') return quoted;
  return quoted + Math.round((quoted * (escalationPercent ?? 0)) / 100);
}

function taxedBefore(bid: Bid, on: readonly BidLineName[]): number {
  return bid.quotes
    .filter(({ chosen, tax, goesTo }) => chosen && tax === 'in' && on.includes(goesTo))
    .reduce((sum, quote) => sum + escalatedQuote(bid, quote), 0);
}

/** Percent of tax on one line, all taxes together: for what is priced by the piece. */
export function taxPercentOn(bid: Bid, line: BidLineName): number {
  return taxesOf(bid).reduce((sum, { on, percent }) => sum + (on.includes(line) ? percent : 0), 0);
}
