import { z } from 'zod';
import { NO_LEVEL, type Place } from '../../../views/pages/hours/place.ts';
import { HoursPage, type HoursPageProps, HoursTools } from '../../../views/pages/hours.tsx';
import { type HoursBoard, hoursBoard, linesOf, runIdsOf } from '../../actions/boards/hours-board.ts';
import type { Context } from '../../actions/context.ts';
import { hoursCsv } from '../../document/hours-csv.ts';
import { ACTIVITIES } from '../../domain/labour/result.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { sendCsv } from './csv.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { pagerOf } from './pager.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({
  activity: z
    .enum([...ACTIVITIES, 'extra'])
    .optional()
    .catch(undefined),
  level: z.string().max(200).optional(),
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
type Query = z.infer<typeof query>;
const LINES_A_PAGE = 200;

/** The hours of the job, as a page and as a file. */
export function hours(app: App, context: Context): void {
  app.get('/jobs/:jobId/hours', { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const board = await hoursBoard(context, viewerOf(request), jobId);
    const { heading, labour, book, levels, leftOut, spread } = board;
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, {
        title: 'Hours',
        part: 'hours',
        revision: `design ${heading.designVersion}`,
        tools: HoursTools({ jobId, mayMoney: heading.reached.may('money') }),
      }),
      HoursPage({
        jobId,
        units: heading.project.units,
        currency: heading.project.currency,
        levels,
        labour,
        book,
        leftOut,
        spread,
        mayMoney: heading.reached.may('money'),
        place: placeOf(board, request.query),
        opened: await openedOf(context, board, jobId, request.query),
      }),
    );
  });

  app.get('/jobs/:jobId/hours.csv', { schema: { hide: true, params } }, async (request, reply) => {
    const { heading, labour, book } = await hoursBoard(context, viewerOf(request), request.params.jobId);
    return sendCsv(reply, `${heading.project.number}-hours`, hoursCsv(labour?.lines ?? [], book?.version ?? ''));
  });
}

/** The level whose activities were asked for; null for one that the job does not have. */
function placeOf({ levels }: HoursBoard, { activity, level }: Query): Place | null {
  if (level === undefined || activity !== undefined) return null;
  if (level === NO_LEVEL) return { id: null, name: 'No level' };
  return levels.find(({ id }) => id === level) ?? null;
}

async function openedOf(
  context: Context,
  { labour, levels }: HoursBoard,
  jobId: string,
  { activity, level, page }: Query,
): Promise<HoursPageProps['opened']> {
  if (labour === null || activity === undefined) return null;
  const lines = linesOf(labour, activity, level === NO_LEVEL ? null : level);
  const first = (page - 1) * LINES_A_PAGE;
  const shown = lines.slice(first, first + LINES_A_PAGE);
  const listed = { items: shown, total: lines.length, page, limit: LINES_A_PAGE };
  return {
    activity,
    where: level === undefined ? 'whole job' : (levels.find((one) => one.id === level)?.name ?? 'no level'),
    lines: shown,
    runIds: await runIdsOf(context, jobId, shown),
    pager:
      lines.length > LINES_A_PAGE
        ? pagerOf(listed, 'lines', `/jobs/${jobId}/hours`, { activity, level: level ?? '' })
        : null,
  };
}
