import { z } from 'zod';
import { OrderPage, OrderTools } from '../../../../views/pages/takeoff/order.tsx';
import { noDateWords, purposeWord } from '../../../../views/words/order-items.ts';
import { orderBoard } from '../../../actions/boards/order-board.ts';
import type { Context } from '../../../actions/context.ts';
import { orderCsv } from '../../../document/order-csv.ts';
import type { Order } from '../../../domain/ordering/order-list.ts';
import { groupBy } from '../../../domain/takeoff/group-by.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { sendCsv } from '../csv.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { withQuery } from '../pager.ts';
import { placesHref } from './places-href.ts';
import { sayMarks } from './say-marks.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({
  level: z.string().max(200).default(''),
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
const LINES_A_PAGE = 200;

/** What to order by floor and need date, as a page and as a file. */
export function order(app: App, context: Context): void {
  const path = '/jobs/:jobId/takeoff/order';
  app.get(path, { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const { level, page } = request.query;
    const board = await orderBoard(context, viewerOf(request), jobId, { level });
    const { heading, orders } = board;
    const base = `/jobs/${jobId}/takeoff/order`;
    const pages = inPages(orders);
    const shown = pages[page - 1] ?? [];
    const at = (other: number) => withQuery(base, { level, page: String(other) });
    const before = pages.slice(0, page - 1).flat().length;
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, {
        title: 'Order list',
        part: 'takeoff',
        revision: `design ${heading.designVersion}`,
        tools: OrderTools({ jobId, csv: withQuery(`${base}.csv`, { level }), design: heading.reached.may('design') }),
      }),
      OrderPage({
        ...board,
        jobId,
        units: heading.project.units,
        level,
        today: todayAt(context.clock(), heading.project.timeZone),
        orders: shown,
        pager:
          pages.length > 1
            ? {
                first: before + 1,
                last: before + shown.length,
                total: orders.length,
                things: 'orders',
                before: page > 1 ? at(page - 1) : null,
                after: page < pages.length ? at(page + 1) : null,
              }
            : null,
        placesHref: (thing) => placesHref(jobId, 'order', thing),
      }),
    );
  });

  app.get(`${path}.csv`, { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { level } = request.query;
    const board = await orderBoard(context, viewerOf(request), request.params.jobId, { level });
    const { project } = board.heading;
    const name = `${project.number}-order${level === '' ? '' : `-${level}`}`;
    return sendCsv(
      reply,
      name,
      orderCsv(board.orders, project.units, {
        noDate: noDateWords,
        purpose: purposeWord,
        marks: (line) => sayMarks(line, board.marksOf),
      }),
    );
  });
}

/** Levels stay whole: as many as have lines enough for a page, one at least. */
function inPages(orders: readonly Order[]): Order[][] {
  const pages: Order[][] = [];
  let lines = 0;
  for (const floor of groupBy(orders, ({ level }) => level ?? '')) {
    const own = floor.reduce((sum, one) => sum + one.lines.length, 0);
    const last = pages.at(-1);
    if (last !== undefined && lines + own <= LINES_A_PAGE) last.push(...floor);
    else pages.push([...floor]);
    lines = last !== undefined && lines + own <= LINES_A_PAGE ? lines + own : own;
  }
  return pages;
}

/** The day at the site. */
function todayAt(now: Date, timeZone: string | undefined): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone: timeZone ?? 'UTC' }).format(now);
}
