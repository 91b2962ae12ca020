import type { Labour } from '../labour/result.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Bid, Job } from '../model.ts';
import type { SpareLine } from '../ordering/spares.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import type { UnitItem } from './bid-entries.ts';
import { bidLacks } from './bid-lacks.ts';
import { sumOfLines } from './bid-line.ts';
import { boughtMaterial } from './bought.ts';
import { costLines, timedAmount } from './cost-lines.ts';
import { isFor } from './held.ts';
import { judgeBid } from './judge-bid.ts';
import { levelQuotes } from './level-quotes.ts';
import { markLines } from './marks.ts';
import { priceAlternates } from './price-alternates.ts';
import { priceSpares } from './price-spares.ts';
import { priceTakeoff } from './price-takeoff.ts';
import { priceUnits } from './price-units.ts';
import type { BidResult, PricedLine } from './result.ts';

/**
 * The bid of a job: the lines of cost (`costLines`), then overhead on the cost, the bond and profit on all of it make the
 * price. Minor units; every line is rounded once and the lines sum to the price. What nobody has entered adds no line; a
 * missing price is named in `incomplete`. Alternates and unit prices follow from the same build-up.
 *
 * Source: the trade's build-up (domain rules §5). Contingency is the step from P50 to the chosen P of the hours.
 * Example: cost 1,783,755, 10 % overhead, 6 % margin: 1,962,130.50 / 0.94 = 2,087,373.
 */
export function computeBid(job: Job, bid: Bid, { layouts, takeoff, labour, spares }: Counted): BidResult {
  const isOurs = (item: string) => !bid.ownerFurnished.some((owners) => isFor(item, owners));
  const isPriced = bid.materials === null || bid.unitPrices.length > 0;
  const priced = isPriced ? priceTakeoff(job, layouts, takeoff).filter(({ key }) => isOurs(key)) : [];
  const ownSpares = spares?.filter(({ item }) => isOurs(item)) ?? null;
  const bought = boughtMaterial(bid, priced, bid.spares === null ? priceSpares(job, ownSpares) : []);
  const cost = costLines(job, bid, bought, labour);
  const lines = [...cost, ...markLines(bid, sumOfLines(cost))];
  const price = sumOfLines(lines);
  const packages = levelQuotes(bid.quotes, knownAmounts(priced));
  const unitPrices = priceUnits({ job, bid, layouts, takeoff, labour, priced, bought, cost: sumOfLines(cost), price });
  return {
    lines,
    cost: sumOfLines(cost),
    price,
    incomplete: bidLacks({ job, bid, bought, layouts, takeoff, labour, packages, unitPrices }),
    materials: bid.materials === null ? bought.priced : [],
    held: bought.held,
    spares: bought.spares,
    packages,
    timed: bid.timed.map((entry) => ({ ...entry, amount: timedAmount(entry) })),
    subcontracts: bid.subcontracts,
    alternates: priceAlternates(bid, labour?.costPerProductiveHour ?? null, sumOfLines(cost)),
    unitPrices,
    checks: judgeBid({ bid, lines, labour, takeoff, packages, unitPrices, spares: ownSpares }),
    terms: termsOf(bid),
  };
}

/** What things of the takeoff come to at our own prices, where all of their prices are known. */
function knownAmounts(priced: readonly PricedLine[]): ReadonlyMap<UnitItem, number> {
  const known = new Map<UnitItem, number>();
  for (const { key, amount } of priced) known.set(key, (known.get(key) ?? 0) + (amount ?? Number.NaN));
  return new Map([...known].filter(([, amount]) => !Number.isNaN(amount)));
}

interface Counted {
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: Labour | null;
  /** By the job's rules for ordering; null without any. */
  readonly spares: readonly SpareLine[] | null;
}

function termsOf(bid: Bid): BidResult['terms'] {
  const { date, validUntil, estimateClass, ownerFurnished, inclusions, exclusions, qualifications, addenda } = bid;
  return { date, validUntil, estimateClass, ownerFurnished, inclusions, exclusions, qualifications, addenda };
}
