import type { BidLine, BidResult } from '../domain/bid/result.ts';
import type { Figures } from '../domain/figures.ts';
import type { Finding } from '../domain/finding.ts';
import type { Labour } from '../domain/labour/result.ts';
import type { SpareLine } from '../domain/ordering/spares.ts';
import type { TakeoffLine } from '../domain/takeoff/result.ts';
import { toMm } from '../domain/units/length.ts';
import { printLayout } from './print-layout.ts';

/** Decimals that are printed; nothing is rounded before. A metre on the grid of 1/80 mm has at most seven. */
const HOURS = 6;
const QUANTITY = 7;

/**
 * The figures in the shape "busway-figures/1" of the job document, keys in its order: the same figures always print the
 * same bytes. A run without a sound layout has empty lists and `"incomplete": true`, and so have hours that leave one out.
 */
export function printFigures(figures: Figures) {
  const allSound = figures.layouts.every((layout) => layout.ok);
  return {
    format: 'busway-figures/1',
    runs: figures.layouts.map((layout) => ({
      id: layout.run,
      lengthMm: toMm(layout.length),
      layout: printLayout(layout),
      electrical: figures.electrical,
      failover: figures.failover,
    })),
    takeoff: figures.takeoff.map(printTakeoffLine),
    ...(figures.spares !== null && { spares: figures.spares.map(printSpares) }),
    labour: figures.labour && printLabour(figures.labour, allSound),
    bid: figures.bid && printBid(figures.bid),
    checks: figures.checks.map(printCheck),
  };
}

function printTakeoffLine({ item, kind, hand, length, run, level, quantity, unit }: TakeoffLine) {
  return {
    item,
    ...(kind !== null && { kind }),
    ...(hand !== null && { hand }),
    ...(length !== null && { lengthMm: toMm(length) }),
    run,
    level,
    quantity: rounded(quantity, QUANTITY),
    unit,
  };
}

/** Beside the takeoff, and only where the job states rules for spares. */
function printSpares({ item, kind, hand, length, type, needed, waste, spare, owner, unit }: SpareLine) {
  return {
    item,
    ...(kind !== null && { kind }),
    ...(hand !== null && { hand }),
    ...(length !== null && { lengthMm: toMm(length) }),
    type,
    needed: rounded(needed, QUANTITY),
    waste: rounded(waste, QUANTITY),
    spare: rounded(spare, QUANTITY),
    owner,
    unit,
  };
}

function printLabour(labour: Labour, complete: boolean) {
  const { likely, mean, sd, p10, p50, p80, p90 } = labour.range;
  return {
    ...(!complete && { incomplete: true }),
    hours: {
      likely: rounded(likely, HOURS),
      mean: rounded(mean, HOURS),
      sd: rounded(sd, HOURS),
      p10: rounded(p10, HOURS),
      p50: rounded(p50, HOURS),
      p80: rounded(p80, HOURS),
      p90: rounded(p90, HOURS),
    },
    byActivity: labour.byActivity.map(({ activity, quantity, hours }) => ({
      activity,
      quantity: rounded(quantity, QUANTITY),
      hours: rounded(hours, HOURS),
    })),
    byLevel: labour.byLevel.map(({ level, hours }) => ({ level, hours: rounded(hours, HOURS) })),
    byRun: labour.byRun.map(({ run, hours }) => ({ run, hours: rounded(hours, HOURS) })),
    costPerProductiveHour: labour.costPerProductiveHour,
  };
}

function printBid({ lines, cost, price, incomplete, ...more }: BidResult) {
  return { lines: lines.map(printBidLine), cost, price, incomplete, ...printOffered(more) };
}

function printBidLine({ line, label, amount }: BidLine) {
  return { line, ...(label !== null && { label }), amount };
}

/** What only a bid with alternates, unit prices, quotes or checks has: without them the bid prints as it always did. */
function printOffered({
  alternates,
  unitPrices,
  packages,
  checks,
}: Omit<BidResult, 'lines' | 'cost' | 'price' | 'incomplete'>) {
  return {
    ...(alternates.length > 0 && {
      alternates: alternates.map(({ entry, amount }) => ({ name: entry.name, kind: entry.kind, amount })),
    }),
    ...(unitPrices !== null && {
      unitPrices: unitPrices.lines.map(({ item, unit, quantity, worked, offered, extended }) => ({
        item,
        unit,
        quantity,
        price: offered ?? worked,
        extended,
      })),
      unitPriceRemainder: unitPrices.remainder,
    }),
    ...(packages.length > 0 && {
      quotes: packages.flatMap(({ name, quotes }) =>
        quotes.map(({ quote, total, missing }) => ({
          package: name,
          quote: quote.id,
          levelled: total,
          chosen: quote.chosen,
          missing,
        })),
      ),
    }),
    ...(checks.length > 0 && { checks: checks.map(printCheck) }),
  };
}

function printCheck({ rule, severity, run, at, message, source }: Finding) {
  return { rule, severity, run, atMm: at === null ? null : toMm(at), message, source };
}

/** Rounds to so many decimals. JSON has no word for a figure that is not finite, so one is our mistake and is thrown. */
function rounded(value: number, decimals: number): number {
  if (!Number.isFinite(value)) throw new Error(`a figure came out as ${value}`);
  const scale = 10 ** decimals;
  const nearest = Math.round(value * scale) / scale;
  return Number.isFinite(nearest) ? nearest : value;
}

/** The same for everybody but the office: what an hour costs is left out. */
export function figuresWithoutMoney(printed: ReturnType<typeof printFigures>) {
  return { ...printed, labour: printed.labour && { ...printed.labour, costPerProductiveHour: null }, bid: null };
}
