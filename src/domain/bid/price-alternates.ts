import type { Bid } from '../model.ts';
import type { AlternateEntry } from './bid-entries.ts';
import { bidLine, percentLine, sumOfLines } from './bid-line.ts';
import { evenBond } from './bond.ts';
import { markLines } from './marks.ts';
import { materialSteps } from './material-lines.ts';
import type { AlternatePrice, BidLine } from './result.ts';
import { taxLines } from './tax-lines.ts';

/**
 * Alternates at the bid's own percentages: waste, escalation, tax, consumables, overhead, bond and profit on the direct
 * cost that each names; hours at the cost of a productive one. No contingency. Of a bond by a scale an alternate bears what it
 * changes on top of the bid's own `cost`. Minor units, each line rounded once.
 *
 * Example: material 1,000.00 added, 7 % tax, 10 % overhead, 6 % markup: 1,070.00 of cost, 1,247.62 on the price.
 */
export function priceAlternates(bid: Bid, rate: number | null, cost: number): readonly AlternatePrice[] {
  return bid.alternates.map((entry) => priceAlternate(entry, bid, rate, cost));
}

function priceAlternate(entry: AlternateEntry, bid: Bid, rate: number | null, beside: number): AlternatePrice {
  const cost = directLines(entry, bid, rate);
  const direct = sumOfLines(cost);
  const bond = evenBond(bid, beside, entry.kind === 'add' ? beside + direct : beside - direct);
  const lines = [...cost, ...markLines({ ...bid, bond }, direct)];
  const isKnown = alternateLacks(entry, rate) === null;
  const sum = sumOfLines(lines);
  return { entry, lines, amount: isKnown ? (entry.kind === 'add' || sum === 0 ? sum : -sum) : null };
}

/** What an alternate has no figure for, in words; null when it can be priced. */
export function alternateLacks(
  { materials, hours, subcontracts, other }: AlternateEntry,
  rate: number | null,
): string | null {
  if ([materials, hours, subcontracts, other].every((figure) => figure === null)) return 'any figure';
  return hours !== null && rate === null ? 'the cost of an hour' : null;
}

function directLines(entry: AlternateEntry, bid: Bid, rate: number | null): readonly BidLine[] {
  const lines: BidLine[] = [];
  // The quotes of the bid are for the bid: an alternate has its own figure for material, and all of it is taxed.
  const own: Bid = { ...bid, quotes: [] };
  if (entry.materials !== null) {
    lines.push(bidLine('materials', entry.materials, { kind: 'entered' }));
    lines.push(
      ...materialSteps(own, { priced: [], held: [], chosen: [], own: entry.materials, quoted: [], spares: [] }),
    );
  }
  if (entry.hours !== null && rate !== null) {
    const working = { kind: 'hours', hours: entry.hours, costPerHour: rate } as const;
    const labour = bidLine('labour', entry.hours * rate, working);
    lines.push(labour);
    if (bid.consumablesPercent !== null)
      lines.push(percentLine('consumables', bid.consumablesPercent, labour.amount, { on: ['labour'] }));
  }
  if (entry.subcontracts !== null) lines.push(bidLine('subcontracts', entry.subcontracts, { kind: 'entered' }));
  if (entry.other !== null) lines.push(bidLine('other', entry.other, { kind: 'entered' }));
  return [...lines, ...taxLines(own, lines).filter(({ amount }) => amount !== 0)];
}
