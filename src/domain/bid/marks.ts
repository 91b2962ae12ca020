import type { Bid } from '../model.ts';
import { bidLine, percentLine, sumOfLines } from './bid-line.ts';
import { profitOn } from './profit.ts';
import type { BidLine } from './result.ts';

type Marks = Pick<Bid, 'overheadPercent' | 'bond' | 'profit'>;

/**
 * What makes a cost a price: overhead on the cost, the bond, then profit on all of it. A premium on the price is reckoned
 * on the price that holds it: with b of the price and a markup u, price = (cost + overhead)(1 + u) / (1 - b(1 + u)).
 * Minor units. The document refuses a bond and a profit that together leave nothing.
 *
 * Source: the trade's build-up (domain rules §5).
 * Example: 100 with 10 % overhead, a bond of 2 % of the price and a 6 % margin: 110 / 0.92 = 119.57, bond 2.39, profit 7.17.
 */
export function markLines({ overheadPercent, bond, profit }: Marks, cost: number): readonly BidLine[] {
  const lines: BidLine[] = [];
  const soFar = () => cost + sumOfLines(lines);
  if (overheadPercent !== null) lines.push(percentLine('overhead', overheadPercent, cost));
  if (bond !== null) {
    const factor = bond.of === 'price' ? priceFactor(bond.percent, profit) : 1;
    const of = soFar() * factor;
    lines.push(
      bidLine('bond', (of * bond.percent) / 100, { kind: 'bond', percent: bond.percent, of, base: bond.of, factor }),
    );
  }
  if (profit !== null) {
    const of = soFar();
    const { amount, markupPercent, marginPercent } = profitOn(of, profit);
    lines.push(bidLine('profit', amount, { kind: 'profit', markupPercent, marginPercent, of }));
  }
  return lines;
}

/** The price of a cost of one, unrounded. */
export function markFactor({ overheadPercent, bond, profit }: Marks): number {
  const withOverhead = 1 + (overheadPercent ?? 0) / 100;
  if (bond === null) return withOverhead * withProfit(profit);
  return bond.of === 'price'
    ? withOverhead * priceFactor(bond.percent, profit)
    : withOverhead * (1 + bond.percent / 100) * withProfit(profit);
}

function priceFactor(percent: number, profit: Bid['profit']): number {
  const rest = 1 - (percent / 100) * withProfit(profit);
  if (!(rest > 0)) throw new RangeError(`a bond of ${percent} % of the price leaves nothing beside the profit`);
  return withProfit(profit) / rest;
}

function withProfit(profit: Bid['profit']): number {
  return profit === null ? 1 : 1 + profitOn(1, profit).amount;
}
