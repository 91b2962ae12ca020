import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { activityWord } from '../../../views/words/activities.ts';
import { bidLineWord } from '../../../views/words/bid-entries.ts';
import { inventedWords } from '../../../views/words/invented.ts';
import { takeoffLineWords } from '../../../views/words/takeoff-items.ts';
import { bidBoard } from '../../actions/boards/bid-board.ts';
import { hoursBoard } from '../../actions/boards/hours-board.ts';
import { orderBoard } from '../../actions/boards/order-board.ts';
import { takeoffBoard } from '../../actions/boards/takeoff-board.ts';
import type { Context } from '../../actions/context.ts';
import type { JobHeading } from '../../actions/job-heading.ts';
import { refuse } from '../../actions/refused.ts';
import { hoursByLevel } from '../../domain/labour/hours-by-level.ts';
import type { TakeoffLine } from '../../domain/takeoff/result.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import { toMm } from '../../domain/units/length.ts';
import { bidWorkbook } from '../../paper/workbooks/bid-workbook.ts';
import { type OrderRow, takeoffWorkbook } from '../../paper/workbooks/takeoff-workbook.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { fileName } from './csv.ts';
import { orderRows } from './takeoff/order-rows.ts';

const params = z.object({ jobId: z.string() });
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Takeoff and bid as workbooks. The bid is the office's. */
export function workbooks(app: App, context: Context): void {
  app.get('/jobs/:jobId/takeoff.xlsx', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const board = await takeoffBoard(context, viewer, jobId, { by: 'job', level: '' });
    const { lines: byLevel } = await takeoffBoard(context, viewer, jobId, { by: 'level', level: '' });
    const { heading } = board;
    const row = (line: TakeoffLine) => orderRow(line, heading.project.units);
    const bytes = await takeoffWorkbook({
      title: titleOf(heading, 'takeoff', context.clock()),
      at: context.clock(),
      job: board.lines.map(row),
      byLevel: byLevel.map(row),
      counted: board.counted.map(row),
      ...orderRows(await orderBoard(context, viewer, jobId, { level: '' })),
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
}

function titleOf({ project, designVersion }: JobHeading, what: string, at: Date): string {
  return `${project.number} ${project.name} – ${what}, design ${designVersion}, ${at.toISOString().slice(0, 16)}Z`;
}

function orderRow(line: TakeoffLine, units: 'ft-in' | 'metric'): OrderRow {
  return {
    level: line.level ?? '',
    run: line.run ?? '',
    thing: takeoffLineWords(line),
    type: line.type ?? '',
    length: line.length === null ? '' : formatLength(line.length, units),
    lengthMm: line.length === null ? null : toMm(line.length),
    quantity: line.quantity,
    unit: line.unit,
    places: line.places.map((at) => formatLength(at, units)).join('; '),
  };
}

function sendWorkbook(reply: FastifyReply, name: string, bytes: Uint8Array): FastifyReply {
  return reply
    .type(XLSX)
    .header('content-disposition', `attachment; filename="${fileName(name)}.xlsx"`)
    .send(Buffer.from(bytes));
}
