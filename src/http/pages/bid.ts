import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { BidPage, BidTools } from '../../../views/pages/bid.tsx';
import { BidSectionPage, SECTION_WORDS } from '../../../views/pages/bid-section.tsx';
import { bidEntryWord } from '../../../views/words/bid-entries.ts';
import { setBid } from '../../actions/bids.ts';
import { type BidBoard, bidBoard } from '../../actions/boards/bid-board.ts';
import type { Context } from '../../actions/context.ts';
import { readBidForm } from '../../document/bid-form/read-bid-form.ts';
import type { BidSection } from '../../document/bid-form/sections.ts';
import { writeBidForm } from '../../document/bid-form/write-bid-form.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { standingOf } from './bid/standing-of.ts';
import { attempt, entered, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { type FragmentTried, fragmentProps } from './settings/fragment.ts';

const params = z.object({ jobId: z.string() });

/** Each form of the bid has a page; that of the price is the bid's own. */
const PAGES = [
  ['price', ''],
  ['cost', '/costs'],
  ['quotes', '/quotes'],
  ['offer', '/offer'],
] as const satisfies readonly (readonly [BidSection, string])[];

/** The bid: what was entered, and the lines that make the price. Office only. */
export function bid(app: App, context: Context): void {
  for (const [section, end] of PAGES) {
    const path = `/jobs/:jobId/bid${end}` as const;
    app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, section, null));
    app.post(path, { schema: { hide: true, params } }, (request, reply) => save(context, request, reply, section));
  }
}

async function save(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  section: BidSection,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const fields = entered(request);
  const { heading, entries } = await bidBoard(context, viewer, jobId);
  const read = readBidForm(fields, heading.project, section, entries.document ?? {});
  if (read.faults.length > 0) return show(context, request, reply, section, { fields, faults: read.faults });
  const tried = await attempt(async () => setBid(context, viewer, jobId, formVersion(request), read.bid));
  if (tried.ok) return goTo(reply, pathOf(jobId, section), 'The entries of the bid are saved.');
  const placed = tried.trouble.faults.map((fault) => ({ ...fault, path: read.fieldOf(fault.path) }));
  const faults = placed.filter(({ path }, index) => placed.findIndex((other) => other.path === path) === index);
  return show(context, request, reply, section, { fields, faults: [], trouble: { ...tried.trouble, faults } });
}

function pathOf(jobId: string, section: BidSection): string {
  const [, end] = PAGES.find(([own]) => own === section) ?? ['price', ''];
  return `/jobs/${jobId}/bid${end}`;
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  section: BidSection,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const board = await bidBoard(context, viewerOf(request), jobId);
  const { heading, entries, bid } = board;
  const now = writeBidForm(entries.document ?? {}, heading.project, section);
  const standing = standingOf(tried, { section, project: heading.project, entries, now });
  const form = {
    ...fragmentProps(context, request, reply, {
      path: pathOf(jobId, section),
      settings: section === 'price' ? `/jobs/${jobId}/hours` : `/jobs/${jobId}/bid`,
      version: standing.version,
      tried,
      wordOf: bidEntryWord,
      now,
      removal: null,
    }),
    ...standing.shown,
    currency: heading.project.currency,
    bid,
  };
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: section === 'price' ? 'Bid' : `Bid: ${SECTION_WORDS[section].title.toLowerCase()}`,
        part: 'hours',
        revision: `design ${heading.designVersion}`,
        trouble: tried?.trouble,
        ...(bid === null || section !== 'price' ? {} : { tools: BidTools({ jobId }) }),
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    section === 'price' ? pricePage(context, reply, jobId, board, form) : BidSectionPage({ section, ...form }),
  );
}

function pricePage(
  context: Context,
  reply: FastifyReply,
  jobId: string,
  { heading, entries, bid, frozen, labourBook }: BidBoard,
  form: Omit<Parameters<typeof BidSectionPage>[0], 'section'>,
) {
  return BidPage({
    ...form,
    jobId,
    units: heading.project.units,
    labourBook,
    entries: entries.document ?? {},
    frozen: {
      jobId,
      csrf: formToken(reply),
      submissionId: context.newId(),
      currency: heading.project.currency,
      zone: heading.project.timeZone ?? null,
      frozen,
      can: bid !== null,
    },
  });
}
