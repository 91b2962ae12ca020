import { z } from 'zod';
import { PlacesPage, PlacesTools } from '../../../../views/pages/takeoff/places.tsx';
import { orderLineWords } from '../../../../views/words/order-items.ts';
import { placesBoard } from '../../../actions/boards/places-board.ts';
import type { Context } from '../../../actions/context.ts';
import { ORDER_ITEMS } from '../../../domain/ordering/ordering.ts';
import { shownQuantity } from '../../../domain/units/quantities.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { pagerOf } from '../pager.ts';

const params = z.object({ jobId: z.string() });
const text = z.string().max(300).default('');
const query = z.object({
  of: z.enum(['takeoff', 'order']).default('takeoff').catch('takeoff'),
  item: z.enum(ORDER_ITEMS).catch('section'),
  kind: text,
  hand: text,
  length: z.string().regex(/^\d*$/).max(12).default('').catch(''),
  type: text,
  level: text,
  run: text,
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
const PLACES_A_PAGE = 200;

/** The places that one line was counted from: run, mark and distance, however many there are. */
export function places(app: App, context: Context): void {
  const path = '/jobs/:jobId/takeoff/places';
  app.get(path, { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const { page, ...line } = request.query;
    const board = await placesBoard(context, viewerOf(request), jobId, line, {
      first: (page - 1) * PLACES_A_PAGE,
      count: PLACES_A_PAGE,
    });
    const { heading, rows, total } = board;
    const base = `/jobs/${jobId}/takeoff`;
    const listed = { items: rows, total, page, limit: PLACES_A_PAGE };
    const words = orderLineWords({
      item: line.item,
      kind: line.kind || null,
      hand: line.hand || null,
      unit: board.unit,
    });
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, {
        title: `Counted from: ${words}`,
        part: 'takeoff',
        revision: `design ${heading.designVersion}`,
        tools: PlacesTools({ href: line.of === 'order' ? `${base}/order` : base }),
      }),
      PlacesPage({
        words,
        ...shownQuantity(board, heading.project.units),
        units: heading.project.units,
        rows: rows.map((row) => ({ ...row, href: row.runId === null ? null : `/jobs/${jobId}/runs/${row.runId}` })),
        total,
        pager: total > PLACES_A_PAGE ? pagerOf(listed, 'places', `${base}/places`, line) : null,
      }),
    );
  });
}
