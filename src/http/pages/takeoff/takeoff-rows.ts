import { inventedWords } from '../../../../views/words/invented.ts';
import { takeoffLineWords } from '../../../../views/words/takeoff-items.ts';
import { orderBoard } from '../../../actions/boards/order-board.ts';
import { takeoffBoard } from '../../../actions/boards/takeoff-board.ts';
import type { Context, Viewer } from '../../../actions/context.ts';
import type { TakeoffLine } from '../../../domain/takeoff/result.ts';
import { formatLength } from '../../../domain/units/format-length.ts';
import { toMm } from '../../../domain/units/length.ts';
import { shownQuantity } from '../../../domain/units/quantities.ts';
import type { OrderRow } from '../../../paper/workbooks/takeoff-workbook.ts';
import { orderRows } from './order-rows.ts';

/** Takeoff and order list of a job as rows in words, for workbook and paper. */
export async function takeoffRows(context: Context, viewer: Viewer, jobId: string) {
  const board = await takeoffBoard(context, viewer, jobId, { by: 'job', level: '' });
  const { lines: byLevel } = await takeoffBoard(context, viewer, jobId, { by: 'level', level: '' });
  const { heading } = board;
  const order = await orderBoard(context, viewer, jobId, { level: '' });
  const row = (line: TakeoffLine) => rowOf(line, heading.project.units);
  return {
    heading,
    job: board.lines.map(row),
    byLevel: byLevel.map(row),
    counted: board.counted.map(row),
    ...orderRows(order),
    invented: inventedWords(order.labourBook ?? ''),
  };
}

function rowOf(line: TakeoffLine, units: 'ft-in' | 'metric'): OrderRow {
  return {
    level: line.level ?? '',
    run: line.run ?? '',
    thing: takeoffLineWords(line),
    type: line.type ?? '',
    length: line.length === null ? '' : formatLength(line.length, units),
    lengthMm: line.length === null ? null : toMm(line.length),
    ...shownQuantity(line, units),
    places: line.places.map((at) => formatLength(at, units)).join('; '),
  };
}
