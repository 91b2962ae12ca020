import { computeBid } from './bid/compute-bid.ts';
import type { BidResult } from './bid/result.ts';
import { judgeFaceOff } from './face-off/judge-face-off.ts';
import { type Finding, orderJobFindings } from './finding.ts';
import { jobChecks } from './job-checks.ts';
import { computeLabour } from './labour/compute-labour.ts';
import type { Labour } from './labour/result.ts';
import { layoutJob } from './layout/layout-job.ts';
import type { RunLayout } from './layout/result.ts';
import type { Job } from './model.ts';
import { orderThings } from './ordering/order-things.ts';
import { type SpareLine, sparesOf } from './ordering/spares.ts';
import type { TakeoffLine } from './takeoff/result.ts';
import { takeOff } from './takeoff/take-off.ts';

/** Everything that is computed from a job. This edition computes no electrical figures or loss cases: null, not zero. */
export interface Figures {
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  /** null: the job states no rules for spares. They are no part of the takeoff, the hours or the bid. */
  readonly spares: readonly SpareLine[] | null;
  readonly labour: Labour | null;
  readonly electrical: null;
  readonly failover: null;
  /** null without the job's own entries for a bid. */
  readonly bid: BidResult | null;
  readonly checks: readonly Finding[];
}

/**
 * The one pipeline: a job to its layouts, takeoff, hours and checks. Pure: equal jobs give equal figures.
 * `layouts` may be handed in where they are kept beside the design; they are those of the job's runs, in its order.
 */
export function figures(job: Job, layouts: readonly RunLayout[] = layoutJob(job)): Figures {
  const takeoff = takeOff(job, layouts);
  const labour = computeLabour(job, layouts, takeoff);
  const bid = job.bid && computeBid(job, job.bid, { layouts, takeoff, labour });
  const rules = job.project.ordering?.spares ?? [];
  const spares = rules.length === 0 ? null : sparesOf(orderThings(job, layouts, takeoff), rules).lines;
  return {
    layouts,
    takeoff,
    spares,
    labour,
    electrical: null,
    failover: null,
    bid,
    checks: orderJobFindings(job, [...jobChecks(job, layouts, takeoff), ...judgeFaceOff(job, layouts)]),
  };
}
