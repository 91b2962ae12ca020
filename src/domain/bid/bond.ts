import type { Bid } from '../model.ts';
import type { BondEntry } from './bid-entries.ts';
import { profitOn } from './profit.ts';

export type Marks = Pick<Bid, 'overheadPercent' | 'bond' | 'profit'>;

/** A premium with the stretch of the scale that its base ends in: premium = (base x percent) / 100 + fixed, minor units. */
export interface BondPremium {
  readonly percent: number;
  /** What the dearer stretches before it add; 0 without a scale. */
  readonly fixed: number;
  /** The base, made of cost with overhead: (cost + overhead + `fixed` if it is the price) x factor. */
  readonly factor: number;
  readonly of: number;
  readonly amount: number;
  /** How the base falls to the steps that it reaches. */
  readonly steps: readonly { readonly of: number; readonly percent: number }[];
}

/**
 * The premium of a bond on cost with overhead. By a scale every stretch of the base has its own rate, the last one all that
 * is above. A premium on the price is in the price that it is reckoned on: each stretch gives price = (cost + overhead +
 * fixed)(1 + u) / (1 - b(1 + u)) with its rate b and a markup u, and one of these prices lies in its own stretch. Minor
 * units, unrounded.
 *
 * Source: the trade's build-up (domain rules §5); sliding scales as sureties write them, so much for each 1,000 of a stretch.
 * Example: 2.5 % of the first 100,000, 1.5 % of the next 400,000, 1 % above, on a cost of 600,000: 2,500 + 6,000 + 1,000.
 */
export function bondPremium(bond: BondEntry, profit: Bid['profit'], withOverhead: number): BondPremium {
  const stretches = stretchesOf(bond);
  for (const { percent, fixed, end } of stretches) {
    const factor = bond.of === 'price' ? priceFactor(percent, profit) : 1;
    const of = (withOverhead + (bond.of === 'price' ? fixed : 0)) * factor;
    if (of > end) continue;
    return { percent, fixed, factor, of, amount: (of * percent) / 100 + fixed, steps: stepsOf(stretches, of) };
  }
  throw new RangeError('the last stretch of a scale has no end');
}

interface Stretch {
  readonly from: number;
  readonly end: number;
  readonly percent: number;
  readonly fixed: number;
}

function stretchesOf({ percent: above, scale = [] }: BondEntry): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let from = 0;
  let before = 0;
  for (const { amount, percent } of [...scale, { amount: Number.POSITIVE_INFINITY, percent: above }]) {
    stretches.push({ from, end: from + amount, percent, fixed: before - (from * percent) / 100 });
    before += (amount * percent) / 100;
    from += amount;
  }
  return stretches;
}

function stepsOf(stretches: readonly Stretch[], of: number): BondPremium['steps'] {
  return stretches
    .filter(({ from }, index) => index === 0 || of > from)
    .map(({ from, end, percent }) => ({ of: Math.min(of, end) - from, percent }));
}

/**
 * The one rate that stands for a scale between two costs: for what is priced by itself, a unit with its even share of the
 * bond (from 0 to the cost of the bid), an alternate with what it adds to the bond (from the cost of the bid to both).
 * A bond of one rate stays as it is.
 */
export function evenBond({ bond, overheadPercent, profit }: Marks, from: number, to: number): BondEntry | null {
  if (bond?.scale === undefined) return bond;
  const at = (cost: number) => bondPremium(bond, profit, cost * (1 + (overheadPercent ?? 0) / 100));
  const low = at(from);
  const high = at(to);
  const percent = high.of === low.of ? high.percent : ((high.amount - low.amount) / (high.of - low.of)) * 100;
  return { of: bond.of, percent: Number(percent.toFixed(8)) };
}

/** The price of a cost with overhead of one, under a premium of one rate on the price. */
function priceFactor(percent: number, profit: Bid['profit']): number {
  const rest = 1 - (percent / 100) * withProfit(profit);
  if (!(rest > 0)) throw new RangeError(`a bond of ${percent} % of the price leaves nothing beside the profit`);
  return withProfit(profit) / rest;
}

/** What profit makes of a cost of one, unrounded. */
export function withProfit(profit: Bid['profit']): number {
  return profit === null ? 1 : 1 + profitOn(1, profit).amount;
}
