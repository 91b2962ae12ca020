import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { inventedWords } from '../../../views/words/invented.ts';
import { bidBoard } from '../../actions/boards/bid-board.ts';
import { crewsBoard } from '../../actions/boards/crews-board.ts';
import { hoursBoard } from '../../actions/boards/hours-board.ts';
import type { Context } from '../../actions/context.ts';
import type { JobHeading } from '../../actions/job-heading.ts';
import { refuse } from '../../actions/refused.ts';
import { hoursByLevel } from '../../domain/labour/hours-by-level.ts';
import { formatMoney } from '../../domain/units/money.ts';
import { when, zoneName } from '../../paper/closeout/when.ts';
import { estimatePaper, type PaperSheet } from '../../paper/estimate/paper.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { fileName } from './csv.ts';
import { type BidPaperInput, buildUpSheets, clientSheets, summarySheets } from './papers/bid-papers.ts';
import { lookAheadSheets } from './papers/look-ahead-paper.ts';
import { takeoffSheets } from './papers/takeoff-papers.ts';
import { takeoffRows } from './takeoff/takeoff-rows.ts';

const params = z.object({ jobId: z.string() });

interface BidPaper {
  readonly name: string;
  readonly title: string;
  readonly caution: string;
  readonly sheets: (input: BidPaperInput) => PaperSheet[];
}

const OFFICE = 'Holds costs: for the office alone.';
const BID_PAPERS: readonly BidPaper[] = [
  { name: 'bid-summary', title: 'Bid summary', caution: OFFICE, sheets: summarySheets },
  { name: 'bid-build-up', title: 'Build-up of the bid', caution: OFFICE, sheets: buildUpSheets },
  { name: 'bid-client', title: 'Bid', caution: 'An offer, and no permission to energise.', sheets: clientSheets },
];

/** Bid and takeoff as PDF. The bid's are the office's, the client's version among them: the office hands it out. */
export function papers(app: App, context: Context): void {
  for (const { name, title, caution, sheets } of BID_PAPERS) {
    app.get(`/jobs/:jobId/${name}.pdf`, { schema: { hide: true, params } }, async (request, reply) => {
      const { jobId } = request.params;
      const viewer = viewerOf(request);
      const { heading, bid } = await bidBoard(context, viewer, jobId);
      if (bid === null) return refuse({ code: 'not-found', what: 'bid' });
      const { labour, levels, book } = await hoursBoard(context, viewer, jobId);
      const { project } = heading;
      const ids = levels.map(({ id }) => id);
      return send(reply, context, heading, { name, title, caution }, [
        ...sheets({
          bid,
          money: (minor) => formatMoney(minor, project.currency),
          invented: inventedWords(book?.version ?? ''),
          client: project.client,
          site: project.site,
          levels: levels.map((level) => level.name),
          hours: labour === null ? [] : hoursByLevel(labour, ids),
        }),
      ]);
    });
  }

  app.get('/jobs/:jobId/takeoff.pdf', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const { heading, ...rows } = await takeoffRows(context, viewerOf(request), jobId);
    const paper = {
      name: 'takeoff',
      title: 'Takeoff and order list',
      caution: 'Check against the maker’s sheets before ordering.',
    };
    return send(reply, context, heading, paper, takeoffSheets(rows));
  });

  app.get('/jobs/:jobId/look-ahead.pdf', { schema: { hide: true, params } }, async (request, reply) => {
    const { heading, schedule, book } = await crewsBoard(context, viewerOf(request), request.params.jobId);
    if (schedule === null) return refuse({ code: 'not-found', what: 'crew plan' });
    const paper = {
      name: 'look-ahead',
      title: 'Three weeks ahead',
      caution: 'A plan: the foreman’s word stands above it. Work de-energised.',
    };
    const today = context.clock().toISOString().slice(0, 10);
    return send(reply, context, heading, paper, lookAheadSheets(schedule, today, inventedWords(book ?? '')));
  });
}

function send(
  reply: FastifyReply,
  context: Context,
  { project, designVersion }: JobHeading,
  { name, title, caution }: Omit<BidPaper, 'sheets'>,
  sheets: readonly PaperSheet[],
): FastifyReply {
  const now = context.clock();
  const zone = project.timeZone ?? null;
  const bytes = estimatePaper({
    head: {
      title: `${title}, ${project.number} ${project.name}`,
      subject: `${title} of an overhead busway job, design ${designVersion}`,
      jobNumber: project.number,
      jobName: project.name,
      asOf: `${when(now.toISOString(), zone)} ${zoneName(zone)}`,
      asOfDate: now,
      units: project.units,
      caution,
    },
    revision: `design ${designVersion}`,
    sheets,
  });
  return reply
    .type('application/pdf')
    .header('content-disposition', `inline; filename="${fileName(`${project.number}-${name}`)}.pdf"`)
    .send(Buffer.from(bytes));
}
