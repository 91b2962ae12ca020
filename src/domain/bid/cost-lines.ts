import { percentile } from '../labour/hours-range.ts';
import type { Labour } from '../labour/result.ts';
import { simulateHours } from '../labour/simulate-hours.ts';
import type { Bid, Job } from '../model.ts';
import type { Quote, TimedEntry } from './bid-entries.ts';
import { bidLine, percentLine, sumOfLines } from './bid-line.ts';
import { type Bought, offered } from './bought.ts';
import { levelQuote } from './level-quotes.ts';
import { materialSteps } from './material-lines.ts';
import type { BidLine, BidLineName, BidPart } from './result.ts';
import { taxLines } from './tax-lines.ts';

/**
 * The lines of cost in their order: material, waste, escalation and freight; the tax on material where it is one figure;
 * labour and consumables, hand-made lines, lifts and tools by time, subcontracts, other cost, supervision, permit; taxes
 * by category; contingency. What nobody has entered adds no line. Minor units.
 *
 * Source: the trade's build-up (domain rules §5).
 */
export function costLines(job: Job, bid: Bid, bought: Bought, labour: Labour | null): readonly BidLine[] {
  const lines: BidLine[] = [materialLine(bid, bought), ...materialSteps(bid, bought)];
  lines.push(...partsLine('freight', bid.freight, freightOf(bid)));
  if (bid.taxPercent !== null) lines.push(...taxLines({ ...bid, taxes: [] }, lines));
  lines.push(...labourLines(bid, labour), ...extrasLine(job));
  lines.push(...partsLine('equipment', null, timedParts(bid, 'equipment')));
  lines.push(...partsLine('subcontracts', null, subcontractParts(bid)));
  if (bid.other !== null) lines.push(bidLine('other', bid.other, { kind: 'entered' }));
  lines.push(...partsLine('supervision', bid.supervision, timedParts(bid, 'supervision')));
  if (bid.permit !== null) lines.push(bidLine('permit', bid.permit, { kind: 'entered' }));
  lines.push(...taxLines({ ...bid, taxPercent: null }, lines), ...contingencyLine(job, bid, labour));
  return lines;
}

function materialLine(bid: Bid, { own, quoted }: Bought): BidLine {
  if (quoted.length === 0) return bidLine('materials', own, { kind: bid.materials === null ? 'priced' : 'entered' });
  const parts = quoted.map(({ quote, amount }) => quotePart(quote, amount));
  return bidLine('materials', own + totalOf(parts), { kind: 'quoted', takeoff: own, parts });
}

/** A line of parts, with the sum that was entered for it as the first of them; as entered where it stands alone. */
function partsLine(line: BidLineName, entered: number | null, parts: readonly BidPart[]): readonly BidLine[] {
  if (parts.length === 0) return entered === null ? [] : [bidLine(line, entered, { kind: 'entered' })];
  const all = entered === null ? parts : [{ name: 'entered', amount: entered }, ...parts];
  return [bidLine(line, totalOf(all), { kind: 'parts', parts: all })];
}

function totalOf(parts: readonly BidPart[]): number {
  return parts.reduce((sum, { amount }) => sum + amount, 0);
}

function freightOf(bid: Bid): readonly BidPart[] {
  return bid.quotes
    .filter(({ chosen, freight }) => chosen && freight === 'out')
    .map((quote) => quotePart(quote, levelQuote(quote).freight));
}

function quotePart({ id, package: of, supplier }: Quote, amount: number): BidPart {
  return { name: `${of}: ${supplier}`, amount, quote: id };
}

function labourLines(bid: Bid, labour: Labour | null): readonly BidLine[] {
  const rate = labour?.costPerProductiveHour ?? null;
  const hours = labour?.range.likely ?? 0;
  const lines =
    labour === null || rate === null
      ? []
      : [bidLine('labour', hours * rate, { kind: 'hours', hours, costPerHour: rate })];
  if (bid.consumablesPercent !== null)
    lines.push(percentLine('consumables', bid.consumablesPercent, sumOfLines(lines), { on: ['labour'] }));
  else if (bid.consumables !== null) lines.push(bidLine('consumables', bid.consumables, { kind: 'entered' }));
  return lines;
}

function extrasLine(job: Job): readonly BidLine[] {
  if (!job.extras.some(({ price }) => price !== null)) return [];
  const sum = job.extras.reduce((total, { quantity, price }) => total + Math.round(quantity * (price ?? 0)), 0);
  return [bidLine('extras', sum, { kind: 'entered' })];
}

/** number x time x rate + what is paid once, in minor units and rounded; null without a rate. */
export function timedAmount({ number, time, rate, once }: TimedEntry): number | null {
  return rate === null ? null : Math.round(number * time * rate) + (once ?? 0);
}

function timedParts(bid: Bid, to: TimedEntry['goesTo']): readonly BidPart[] {
  return bid.timed.flatMap((entry, timed) =>
    entry.goesTo === to ? [{ name: entry.item, amount: timedAmount(entry) ?? 0, timed }] : [],
  );
}

function subcontractParts(bid: Bid): readonly BidPart[] {
  const quoted = bid.quotes.filter(({ chosen, goesTo }) => chosen && goesTo === 'subcontracts');
  return [
    ...bid.subcontracts.map(({ item, amount }) => ({ name: item, amount: amount ?? 0 })),
    ...quoted.map((quote) => quotePart(quote, offered(quote))),
  ];
}

function contingencyLine(job: Job, bid: Bid, labour: Labour | null): readonly BidLine[] {
  const rate = labour?.costPerProductiveHour ?? null;
  if (bid.contingencyP === null || labour === null || rate === null || job.labourBook === null) return [];
  const to = percentile(simulateHours(labour.lines, job.labourBook), bid.contingencyP / 100);
  const from = labour.range.p50;
  const working = { kind: 'range', from, to, p: bid.contingencyP, costPerHour: rate } as const;
  return [bidLine('contingency', (to - from) * rate, working)];
}
