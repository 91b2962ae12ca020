import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { activityWord } from '../../../views/words/activities.ts';
import { bidLineWord } from '../../../views/words/bid-entries.ts';
import { inventedWords } from '../../../views/words/invented.ts';
import { bidBoard } from '../../actions/boards/bid-board.ts';
import { hoursBoard } from '../../actions/boards/hours-board.ts';
import type { Context } from '../../actions/context.ts';
import type { JobHeading } from '../../actions/job-heading.ts';
import { refuse } from '../../actions/refused.ts';
import { hoursByLevel } from '../../domain/labour/hours-by-level.ts';
import { bidClientWorkbook } from '../../paper/workbooks/bid-client-workbook.ts';
import { bidSummaryWorkbook } from '../../paper/workbooks/bid-summary-workbook.ts';
import { bidWorkbook } from '../../paper/workbooks/bid-workbook.ts';
import { takeoffWorkbook } from '../../paper/workbooks/takeoff-workbook.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { fileName } from './csv.ts';
import { takeoffRows } from './takeoff/takeoff-rows.ts';

const params = z.object({ jobId: z.string() });
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Takeoff and bid as workbooks. The bid is the office's. */
export function workbooks(app: App, context: Context): void {
  app.get('/jobs/:jobId/takeoff.xlsx', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const { heading, invented, ...rows } = await takeoffRows(context, viewerOf(request), jobId);
    const bytes = await takeoffWorkbook({
      title: [titleOf(heading, 'takeoff', context.clock()), invented].filter(Boolean).join(' – '),
      at: context.clock(),
      ...rows,
    });
    return sendWorkbook(reply, `${heading.project.number}-takeoff`, bytes);
  });

  app.get('/jobs/:jobId/bid.xlsx', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const { heading, bid } = await bidBoard(context, viewer, jobId);
    if (bid === null) return refuse({ code: 'not-found', what: 'bid' });
    const { labour, levels, book } = await hoursBoard(context, viewer, jobId);
    const bytes = await bidWorkbook({
      title: [titleOf(heading, 'bid build-up, office only', context.clock()), inventedWords(book?.version ?? '')]
        .filter(Boolean)
        .join(' – '),
      currency: heading.project.currency,
      at: context.clock(),
      bid,
      lineWord: bidLineWord,
      hours: {
        levels: levels.map(({ name }) => name),
        rows:
          labour === null
            ? []
            : hoursByLevel(
                labour,
                levels.map(({ id }) => id),
              ).map(({ activity, hours }) => ({ activity: activityWord(activity), hours })),
      },
    });
    return sendWorkbook(reply, `${heading.project.number}-bid`, bytes);
  });

  app.get('/jobs/:jobId/bid-summary.xlsx', { schema: { hide: true, params } }, async (request, reply) => {
    const { heading, bid, invented } = await pricedBid(context, request, request.params.jobId);
    const at = context.clock();
    const bytes = await bidSummaryWorkbook({
      title: [titleOf(heading, 'bid summary, office only', at), invented].filter(Boolean).join(' – '),
      currency: heading.project.currency,
      at,
      bid,
      lineWord: bidLineWord,
    });
    return sendWorkbook(reply, `${heading.project.number}-bid-summary`, bytes);
  });

  app.get('/jobs/:jobId/bid-client.xlsx', { schema: { hide: true, params } }, async (request, reply) => {
    const { heading, bid, invented } = await pricedBid(context, request, request.params.jobId);
    const at = context.clock();
    const { currency, site } = heading.project;
    const title = [titleOf(heading, 'bid', at), invented].filter(Boolean).join(' – ');
    const bytes = await bidClientWorkbook({ title, currency, site, at, bid });
    return sendWorkbook(reply, `${heading.project.number}-bid-client`, bytes);
  });
}

/** The bid of a job that has one, for who may see money. */
async function pricedBid(context: Context, request: FastifyRequest, jobId: string) {
  const viewer = viewerOf(request);
  const { heading, bid } = await bidBoard(context, viewer, jobId);
  if (bid === null) return refuse({ code: 'not-found', what: 'bid' });
  const { book } = await hoursBoard(context, viewer, jobId);
  return { heading, bid, invented: inventedWords(book?.version ?? '') };
}

function titleOf({ project, designVersion }: JobHeading, what: string, at: Date): string {
  return `${project.number} ${project.name} – ${what}, design ${designVersion}, ${at.toISOString().slice(0, 16)}Z`;
}

function sendWorkbook(reply: FastifyReply, name: string, bytes: Uint8Array): FastifyReply {
  return reply
    .type(XLSX)
    .header('content-disposition', `attachment; filename="${fileName(name)}.xlsx"`)
    .send(Buffer.from(bytes));
}
