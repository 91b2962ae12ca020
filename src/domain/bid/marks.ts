import { bidLine, percentLine, sumOfLines } from './bid-line.ts';
import { bondPremium, evenBond, type Marks, withProfit } from './bond.ts';
import { profitOn } from './profit.ts';
import type { BidLine } from './result.ts';

/**
 * What makes a cost a price: overhead on the cost, the bond (`bondPremium`), then profit on all of it. A premium on the
 * price is reckoned on the price that holds it: with b of the price and a markup u, price = (cost + overhead)(1 + u) /
 * (1 - b(1 + u)). Minor units. The document refuses a bond and a profit that together leave nothing.
 *
 * Source: the trade's build-up (domain rules §5).
 * Example: 100 with 10 % overhead, a bond of 2 % of the price and a 6 % margin: 110 / 0.92 = 119.57, bond 2.39, profit 7.17.
 */
export function markLines({ overheadPercent, bond, profit }: Marks, cost: number): readonly BidLine[] {
  const lines: BidLine[] = [];
  const soFar = () => cost + sumOfLines(lines);
  if (overheadPercent !== null) lines.push(percentLine('overhead', overheadPercent, cost));
  if (bond !== null) {
    const { percent, fixed, factor, of, amount, steps } = bondPremium(bond, profit, soFar());
    const scale = bond.scale === undefined ? {} : { scale: { fixed, steps } };
    lines.push(bidLine('bond', amount, { kind: 'bond', percent, of, base: bond.of, factor, ...scale }));
  }
  if (profit !== null) {
    const of = soFar();
    const { amount, markupPercent, marginPercent } = profitOn(of, profit);
    lines.push(bidLine('profit', amount, { kind: 'profit', markupPercent, marginPercent, of }));
  }
  return lines;
}

/** What the marks make of a cost of one within a bid of this cost, unrounded: of a bond by a scale it bears its even share. */
export function markFactor(marks: Marks, cost: number): number {
  const withOverhead = 1 + (marks.overheadPercent ?? 0) / 100;
  const bond = evenBond(marks, 0, cost);
  if (bond === null) return withOverhead * withProfit(marks.profit);
  return bond.of === 'price'
    ? withOverhead * bondPremium(bond, marks.profit, 1).factor
    : withOverhead * (1 + bond.percent / 100) * withProfit(marks.profit);
}
