import type { Bid } from '../model.ts';
import { percentLine } from './bid-line.ts';
import type { Bought } from './bought.ts';
import type { BidLine, BidLineName } from './result.ts';

/**
 * Waste and escalation on material. Waste is on what is bought by our own count: a quote is for what it names. Escalation
 * is on material with its waste, but not on a quote that is held until delivery. Minor units.
 *
 * Source: the trade's build-up (domain rules §5).
 * Example: 100,000 with 3 % waste and 4 % escalation adds 3,000 and 4,120.
 */
export function* materialSteps(bid: Bid, { own, quoted }: Bought): Generator<BidLine> {
  const allQuoted = total(quoted);
  const waste = bid.wastePercent === null ? 0 : Math.round((own * bid.wastePercent) / 100);
  if (bid.wastePercent !== null)
    yield percentLine('waste', bid.wastePercent, own, { on: ['materials'], ...less(allQuoted) });
  if (bid.escalationPercent === null) return;
  const firm = total(quoted.filter(({ quote }) => quote.firm));
  const of = own + waste + allQuoted - firm;
  const on: readonly BidLineName[] = bid.wastePercent === null ? ['materials'] : ['materials', 'waste'];
  yield percentLine('escalation', bid.escalationPercent, of, { on, ...less(firm) });
}

function total(quoted: Bought['quoted']): number {
  return quoted.reduce((sum, { amount }) => sum + amount, 0);
}

function less(amount: number): { readonly less?: number } {
  return amount === 0 ? {} : { less: amount };
}
