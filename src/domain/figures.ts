import { computeBid } from './bid/compute-bid.ts';
import type { BidResult } from './bid/result.ts';
import { judgeFaceOff } from './face-off/judge-face-off.ts';
import { type Finding, orderJobFindings } from './finding.ts';
import { countChecks } from './job-checks.ts';
import { computeLabour } from './labour/compute-labour.ts';
import { judgeLabour } from './labour/judge-labour.ts';
import type { Labour } from './labour/result.ts';
import { type Work, workOf } from './labour/work-of.ts';
import { layoutJob } from './layout/layout-job.ts';
import type { RunLayout } from './layout/result.ts';
import type { Job, UnpricedJob } from './model.ts';
import { orderThings } from './ordering/order-things.ts';
import { type SpareLine, sparesOf } from './ordering/spares.ts';
import type { TakeoffLine } from './takeoff/result.ts';
import { takeOff } from './takeoff/take-off.ts';

/** Everything that is computed from a job. This edition computes no electrical figures or loss cases: null, not zero. */
export interface Figures {
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  /** null: the job states no rules for spares. They are no part of the takeoff and the hours. */
  readonly spares: readonly SpareLine[] | null;
  readonly labour: Labour | null;
  readonly electrical: null;
  readonly failover: null;
  /** null without the job's own entries for a bid. */
  readonly bid: BidResult | null;
  readonly checks: readonly Finding[];
}

/** What hangs on the layouts, the extras and the rules for ordering: another labour book or bid leaves it as it is. */
export interface Counted {
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  readonly spares: readonly SpareLine[] | null;
  readonly work: Work;
  /** In no order. */
  readonly checks: readonly Finding[];
}

/**
 * The one pipeline: a job to its layouts, takeoff, hours and checks. Pure: equal jobs give equal figures.
 * `layouts` may be handed in where they are kept beside the design; they are those of the job's runs, in its order.
 */
export function figures(job: Job, layouts: readonly RunLayout[] = layoutJob(job)): Figures {
  return priceCounted(job, countJob(job, layouts));
}

/** The first half of `figures`: everything that neither hours nor prices go into. */
export function countJob(job: UnpricedJob, layouts: readonly RunLayout[]): Counted {
  const takeoff = takeOff(job, layouts);
  const rules = job.project.ordering?.spares ?? [];
  return {
    layouts,
    takeoff,
    spares: rules.length === 0 ? null : sparesOf(orderThings(job, layouts, takeoff), rules).lines,
    work: workOf(job, layouts, takeoff),
    checks: [...countChecks(job, layouts), ...judgeFaceOff(job, layouts)],
  };
}

/** The second half: hours and bid of a job, from what was counted of one that is the same but for labour book and bid. */
export function priceCounted(job: Job, { layouts, takeoff, spares, work, checks }: Counted): Figures {
  const labour = computeLabour(job, layouts, takeoff, work);
  return {
    layouts,
    takeoff,
    spares,
    labour,
    electrical: null,
    failover: null,
    bid: job.bid && computeBid(job, job.bid, { layouts, takeoff, labour, spares }),
    checks: orderJobFindings(job, [...checks, ...judgeLabour(job, layouts, takeoff, work)]),
  };
}
