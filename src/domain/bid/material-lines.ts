import type { Bid } from '../model.ts';
import { bidLine, percentLine } from './bid-line.ts';
import type { Bought } from './bought.ts';
import type { BidLine, BidLineName } from './result.ts';

/**
 * Waste, spares and escalation on material. Waste is on what is bought by our own count: a quote is for what it names.
 * Spares are those of the rules for ordering at their prices, or the sum that was entered. Escalation is on material with
 * its waste and spares, but not on a quote that is held until delivery. Minor units.
 *
 * Source: the trade's build-up (domain rules §5).
 * Example: 100,000 with 3 % waste and 4 % escalation adds 3,000 and 4,120.
 */
export function* materialSteps(bid: Bid, { own, quoted, spares }: Bought): Generator<BidLine> {
  const allQuoted = total(quoted);
  const waste = bid.wastePercent === null ? 0 : Math.round((own * bid.wastePercent) / 100);
  if (bid.wastePercent !== null)
    yield percentLine('waste', bid.wastePercent, own, { on: ['materials'], ...less(allQuoted) });
  const spare = bid.spares ?? spares.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const hasSpares = bid.spares !== null || spares.length > 0;
  if (hasSpares) yield bidLine('spares', spare, { kind: bid.spares === null ? 'priced' : 'entered' });
  if (bid.escalationPercent === null) return;
  const firm = total(quoted.filter(({ quote }) => quote.firm));
  const of = own + waste + spare + allQuoted - firm;
  const on: readonly BidLineName[] = [
    'materials',
    ...(bid.wastePercent === null ? [] : (['waste'] as const)),
    ...(hasSpares ? (['spares'] as const) : []),
  ];
  yield percentLine('escalation', bid.escalationPercent, of, { on, ...less(firm) });
}

function total(quoted: Bought['quoted']): number {
  return quoted.reduce((sum, { amount }) => sum + amount, 0);
}

function less(amount: number): { readonly less?: number } {
  return amount === 0 ? {} : { less: amount };
}
