import type { FrozenBid } from '../../document/frozen-bid.ts';
import type { BidResult } from '../../domain/bid/result.ts';
import { type BidView, getBid } from '../bids.ts';
import type { Context, Viewer } from '../context.ts';
import { figuresOf } from '../figures.ts';
import { listFrozenBids } from '../frozen-bids.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';

export interface BidBoard {
  readonly heading: JobHeading;
  readonly entries: BidView;
  /** null until something is entered. */
  readonly bid: BidResult | null;
  readonly frozen: readonly FrozenBid[];
  /** The labour book that the hours are of; null without one. */
  readonly labourBook: string | null;
}

const SHOWN = { page: 1, limit: 100 } as const;

/** The bid with everything that made it. Office only. */
export async function bidBoard(context: Context, viewer: Viewer, projectId: string): Promise<BidBoard> {
  const heading = await jobHeading(context, viewer, projectId, 'money');
  const entries = await getBid(context, viewer, projectId);
  const { figures, job } = await figuresOf(context.database.db, projectId);
  const frozen = await listFrozenBids(context, viewer, projectId, SHOWN);
  return { heading, entries, bid: figures.bid, frozen: frozen.items, labourBook: job.labourBook?.version ?? null };
}
