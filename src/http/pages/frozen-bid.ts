import { z } from 'zod';
import { FrozenBidPage } from '../../../views/pages/frozen-bid.tsx';
import type { Context } from '../../actions/context.ts';
import { figuresToFreeze, freezeBid, getFrozenBid, listFrozenBids } from '../../actions/frozen-bids.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formSubmission } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string() });
const oneParams = params.extend({ id: z.string() });
const query = z.object({ beside: z.string().max(100).default('now') });
const CHOICES = { page: 1, limit: 100 } as const;

/** Freezing a bid, and a frozen one line by line beside another or beside the bid as it stands. */
export function frozenBid(app: App, context: Context): void {
  app.post('/jobs/:jobId/bid/frozen', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const tried = await attempt(async () =>
      freezeBid(context, viewer, jobId, entered(request).name ?? '', formSubmission(request)),
    );
    if (!tried.ok) return goTo(reply, `/jobs/${jobId}/bid#frozen`, sayTrouble(tried.trouble));
    return goTo(reply, `/jobs/${jobId}/bid/frozen/${tried.value.id}`, `The bid is frozen as "${tried.value.name}".`);
  });

  app.get(
    '/jobs/:jobId/bid/frozen/:id',
    { schema: { hide: true, params: oneParams, querystring: query } },
    async (request, reply) => {
      const { jobId, id } = request.params;
      const { beside } = request.query;
      const viewer = viewerOf(request);
      const heading = await jobHeading(context, viewer, jobId, 'money');
      const bid = await getFrozenBid(context, viewer, jobId, id);
      const others = await listFrozenBids(context, viewer, jobId, CHOICES);
      const figures =
        beside === 'now'
          ? await figuresToFreeze(context, viewer, jobId)
          : (await getFrozenBid(context, viewer, jobId, beside)).figures;
      const { currency, timeZone } = heading.project;
      return sendPage(
        request,
        reply,
        jobSheet(context, heading, {
          title: `Frozen bid: ${bid.name}`,
          part: 'hours',
          revision: bid.hash.slice(0, 12),
        }),
        FrozenBidPage({
          jobId,
          bid,
          currency,
          zone: timeZone ?? null,
          others: others.items.filter((other) => other.id !== id),
          beside,
          figures,
        }),
      );
    },
  );
}

function sayTrouble({
  notice,
  faults,
}: {
  notice: string;
  faults: readonly { message: string; remedy: string }[];
}): string {
  const [first] = faults;
  return first === undefined ? notice : `${first.message} ${first.remedy}`;
}
