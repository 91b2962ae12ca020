import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { BidPage, BidTools } from '../../../views/pages/bid.tsx';
import { bidEntryWord } from '../../../views/words/bid-entries.ts';
import { setBid } from '../../actions/bids.ts';
import { bidBoard } from '../../actions/boards/bid-board.ts';
import type { Context } from '../../actions/context.ts';
import { readBidForm, writeBidForm } from '../../document/bid-form.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { type FragmentTried, fragmentProps } from './settings/fragment.ts';

const params = z.object({ jobId: z.string() });

/** The bid: what was entered, and the lines that make the price. Office only. */
export function bid(app: App, context: Context): void {
  const path = '/jobs/:jobId/bid';

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { heading } = await bidBoard(context, viewer, jobId);
    const read = readBidForm(fields, heading.project);
    if (read.faults.length > 0) return show(context, request, reply, { fields, faults: read.faults });
    const tried = await attempt(async () => setBid(context, viewer, jobId, formVersion(request), read.bid));
    if (!tried.ok) return show(context, request, reply, { fields, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/bid`, 'The entries of the bid are saved.');
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const { heading, entries, bid, frozen } = await bidBoard(context, viewerOf(request), jobId);
  const now = writeBidForm(entries.document ?? {}, heading.project);
  const path = `/jobs/${jobId}/bid`;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: 'Bid',
        part: 'hours',
        revision: `design ${heading.designVersion}`,
        trouble: tried?.trouble,
        ...(bid === null ? {} : { tools: BidTools({ jobId }) }),
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    BidPage({
      ...fragmentProps(context, request, reply, {
        path,
        settings: `/jobs/${jobId}/hours`,
        version: entries.version,
        tried,
        wordOf: bidEntryWord,
        now,
        removal: null,
      }),
      currency: heading.project.currency,
      entered: tried === null ? now : tried.fields,
      bid,
      frozen: {
        jobId,
        csrf: formToken(reply),
        submissionId: context.newId(),
        currency: heading.project.currency,
        zone: heading.project.timeZone ?? null,
        frozen,
        can: bid !== null,
      },
    }),
  );
}
