import { percentile } from '../labour/hours-range.ts';
import type { Labour } from '../labour/result.ts';
import { simulateHours } from '../labour/simulate-hours.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Bid, Job } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { priceTakeoff } from './price-takeoff.ts';
import { profitOn } from './profit.ts';
import type { BidLine, BidLineName, BidResult, BidWorking, PricedLine } from './result.ts';

/**
 * The bid of a job: material, tax on it, labour, hand-made lines, other cost, supervision and contingency are the cost;
 * overhead on the cost and profit on both make the price. Minor units; every line is rounded once and the lines sum to
 * the price. Percentages that nobody has entered add no line; a missing price is named in `incomplete`.
 *
 * Source: the trade's build-up (domain rules §5). Contingency is the step from P50 to the chosen P of the hours.
 * Example: cost 1,783,755, 10 % overhead, 6 % margin: 1,962,130.50 / 0.94 = 2,087,373.
 */
export function computeBid(job: Job, bid: Bid, { layouts, takeoff, labour }: Counted): BidResult {
  const materials = bid.materials === null ? priceTakeoff(job, layouts, takeoff) : [];
  const lines = [...costLines(job, bid, materials, labour)];
  const cost = sum(lines);
  if (bid.overheadPercent !== null) lines.push(percentLine('overhead', bid.overheadPercent, cost));
  if (bid.profit !== null) lines.push(profitLine(bid.profit, sum(lines)));
  return {
    lines,
    cost,
    price: sum(lines),
    incomplete: lacks(job, bid, materials, { layouts, takeoff, labour }),
    materials,
  };
}

interface Counted {
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: Labour | null;
}

function* costLines(job: Job, bid: Bid, materials: readonly PricedLine[], labour: Labour | null): Generator<BidLine> {
  const bought = bid.materials ?? materials.reduce((total, { amount }) => total + (amount ?? 0), 0);
  yield line('materials', bought, { kind: bid.materials === null ? 'priced' : 'entered' });
  if (bid.taxPercent !== null) yield percentLine('tax', bid.taxPercent, bought);
  const rate = labour?.costPerProductiveHour ?? null;
  if (labour !== null && rate !== null) {
    const hours = labour.range.likely;
    yield line('labour', hours * rate, { kind: 'hours', hours, costPerHour: rate });
  }
  const extras = job.extras.reduce((total, { quantity, price }) => total + Math.round(quantity * (price ?? 0)), 0);
  if (job.extras.some(({ price }) => price !== null)) yield line('extras', extras, { kind: 'entered' });
  if (bid.other !== null) yield line('other', bid.other, { kind: 'entered' });
  if (bid.supervision !== null) yield line('supervision', bid.supervision, { kind: 'entered' });
  if (bid.contingencyP !== null && labour !== null && rate !== null && job.labourBook !== null) {
    const to = percentile(simulateHours(labour.lines, job.labourBook), bid.contingencyP / 100);
    const from = labour.range.p50;
    yield line('contingency', (to - from) * rate, { kind: 'range', from, to, p: bid.contingencyP, costPerHour: rate });
  }
}

function line(name: BidLineName, amount: number, working: BidWorking): BidLine {
  return { line: name, amount: Math.round(amount), working };
}

function percentLine(name: 'tax' | 'overhead', percent: number, of: number): BidLine {
  return line(name, (of * percent) / 100, { kind: 'percent', percent, of });
}

function profitLine(profit: NonNullable<Bid['profit']>, of: number): BidLine {
  const { amount, markupPercent, marginPercent } = profitOn(of, profit);
  return line('profit', amount, { kind: 'profit', markupPercent, marginPercent, of });
}

function sum(lines: readonly BidLine[]): number {
  return lines.reduce((total, { amount }) => total + amount, 0);
}

function lacks(job: Job, bid: Bid, materials: readonly PricedLine[], counted: Counted): readonly string[] {
  return [
    ...lackingPrices(materials),
    ...lackingOther(bid, counted.takeoff),
    ...lackingExtras(job),
    ...lackingHours(counted),
  ];
}

function lackingPrices(materials: readonly PricedLine[]): string[] {
  return materials
    .filter(({ price }) => price === null)
    .map(({ type, item, detail, quantity }) => {
      const what = detail === null ? item : `${item} ${detail}`;
      return `No price for ${quantity} × ${what} of ${type}: enter it in the type's prices, or a quoted sum for all material.`;
    });
}

const BY_OTHERS = ['fire-seal', 'label', 'slot-closure'] as const;

/** What no type has a price for belongs to the quoted material or to the other cost: with neither it is nowhere. */
function lackingOther(bid: Bid, takeoff: readonly TakeoffLine[]): string[] {
  if (bid.materials !== null || bid.other !== null) return [];
  const items = BY_OTHERS.filter((item) => takeoff.some((counted) => counted.item === item));
  if (items.length === 0) return [];
  return [`No price for ${items.join(', ')}: enter their cost as other direct cost (0 where others bring them).`];
}

function lackingExtras(job: Job): string[] {
  return job.extras
    .filter(({ price, hours }) => price === null && hours === null)
    .map(({ item }) => `The hand-made line "${item}" has neither a price nor hours: enter one, or take the line out.`);
}

function lackingHours({ layouts, labour }: Counted): string[] {
  const unsound = layouts.filter(({ ok }) => !ok).map(({ run }) => run);
  const named = `${unsound.slice(0, 5).join(', ')}${unsound.length > 5 ? ` and ${unsound.length - 5} more` : ''}`;
  return [
    ...(labour === null ? ['No labour book: the price holds no labour. Enter one.'] : []),
    ...(labour !== null && labour.costPerProductiveHour === null
      ? ['The labour book has no crew that works: the price holds no labour. Enter the crew and its rates.']
      : []),
    ...(unsound.length > 0
      ? [`Not in the price, because no sections can be laid yet: ${named}. Mend those runs first.`]
      : []),
  ];
}
