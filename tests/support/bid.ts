import { toModel } from '../../src/document/to-model.ts';
import type { Quote, QuoteLine } from '../../src/domain/bid/bid-entries.ts';
import type { BidResult } from '../../src/domain/bid/result.ts';
import { figures } from '../../src/domain/figures.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import type { Bid, Job } from '../../src/domain/model.ts';
import { aJob } from './job.ts';
import { scenarioT2 } from './scenarios.ts';

/** Hand-made bids for tests of the domain. All names and figures are invented; amounts in cents. */
export function aBid(changes: Partial<Bid> = {}): Bid {
  return {
    materials: null,
    taxPercent: null,
    other: null,
    supervision: null,
    overheadPercent: null,
    profit: null,
    contingencyP: null,
    date: null,
    validUntil: null,
    estimateClass: null,
    wastePercent: null,
    escalationPercent: null,
    spares: null,
    ownerFurnished: [],
    freight: null,
    consumables: null,
    consumablesPercent: null,
    permit: null,
    bond: null,
    taxes: [],
    quotes: [],
    timed: [],
    subcontracts: [],
    alternates: [],
    unitPrices: [],
    inclusions: [],
    exclusions: [],
    qualifications: [],
    addenda: [],
    ...changes,
  };
}

export function aQuote(changes: Partial<Quote> = {}, ...lines: readonly Partial<QuoteLine>[]): Quote {
  return {
    id: 'Q1',
    package: 'Busway',
    goesTo: 'materials',
    supplier: 'Invented Supply',
    date: null,
    validUntil: null,
    freight: 'in',
    freightAmount: null,
    tax: 'out',
    taxAmount: null,
    firm: false,
    chosen: false,
    note: null,
    lines: lines.map((line) => ({ item: 'lot', detail: null, state: 'priced', amount: null, ...line })),
    ...changes,
  };
}

const laidOut = new WeakMap<Job, readonly RunLayout[]>();
const NO_RUNS = aJob({ runs: [] });

/** The bid of a job without runs unless one is given; a job is laid out once. */
export function bidOf(changes: Partial<Bid>, job: Job = NO_RUNS): BidResult {
  const layouts = laidOut.get(job) ?? layoutJob(job);
  laidOut.set(job, layouts);
  const { bid } = figures({ ...job, bid: aBid(changes) }, layouts);
  if (bid === null) throw new Error('a job with entries has a bid');
  return bid;
}

/** The worked bid T2 as a job, with few draws of the hours: its range is tested elsewhere. */
export function quickT2(): Job {
  const job = toModel(scenarioT2());
  return { ...job, labourBook: job.labourBook && { ...job.labourBook, trials: 50 } };
}

export function amountsOf(bid: Pick<BidResult, 'lines'>): Readonly<Record<string, number>> {
  return Object.fromEntries(bid.lines.map(({ line, label, amount }) => [label ?? line, amount]));
}
