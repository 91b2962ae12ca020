import { z } from 'zod';
import { OrderPage, OrderTools } from '../../../../views/pages/takeoff/order.tsx';
import { noDateWords, purposeWord } from '../../../../views/words/order-items.ts';
import { orderBoard } from '../../../actions/boards/order-board.ts';
import type { Context } from '../../../actions/context.ts';
import { orderCsv } from '../../../document/order-csv.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { sendCsv } from '../csv.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { pagerOf, withQuery } from '../pager.ts';
import { placesHref } from './places-href.ts';
import { sayMarks } from './say-marks.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({
  level: z.string().max(200).default(''),
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
const ORDERS_A_PAGE = 30;

/** What to order by floor and need date, as a page and as a file. */
export function order(app: App, context: Context): void {
  const path = '/jobs/:jobId/takeoff/order';
  app.get(path, { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const { level, page } = request.query;
    const board = await orderBoard(context, viewerOf(request), jobId, { level });
    const { heading, orders } = board;
    const base = `/jobs/${jobId}/takeoff/order`;
    const shown = orders.slice((page - 1) * ORDERS_A_PAGE, page * ORDERS_A_PAGE);
    const listed = { items: shown, total: orders.length, page, limit: ORDERS_A_PAGE };
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
        pager: orders.length > ORDERS_A_PAGE ? pagerOf(listed, 'orders', base, { level }) : null,
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

/** The day at the site. */
function todayAt(now: Date, timeZone: string | undefined): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone: timeZone ?? 'UTC' }).format(now);
}
