import { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';
import type { SheetHead } from '../../views/drawings/sheet/head.ts';
import type { Printed } from '../../views/drawings/sheet/strip-sheets.tsx';
import { refuse } from '../actions/refused.ts';
import { drawingPdf } from '../paper/drawings/drawing-pdf.ts';
import { drawingSvg } from '../paper/drawings/drawing-svg.ts';
import type { Chosen } from './drawing-query.ts';
import { fileName } from './pages/csv.ts';

export type DrawingKind = 'pdf' | 'svg';

/** Sends a printed drawing as a file; one that cannot be printed so is refused with what to choose instead. */
export function sendDrawing(
  reply: FastifyReply,
  kind: DrawingKind,
  drawing: {
    readonly head: SheetHead;
    readonly chosen: Chosen;
    readonly printed: Printed;
    readonly picture?: Uint8Array | undefined;
  },
): FastifyReply {
  const { head, chosen, printed, picture } = drawing;
  if (!printed.ok)
    return refuse({ code: 'invalid', faults: [{ path: 'scale', message: printed.why, remedy: printed.remedy }] });
  const file = { head, paper: chosen.paper, sheets: printed.sheets, ...(picture === undefined ? {} : { picture }) };
  const name = fileName(`${head.jobNumber} ${head.title} 1-${printed.ratio} ${chosen.paper}`);
  reply.header('content-disposition', `attachment; filename="${name}.${kind}"`).header('cache-control', 'no-store');
  return kind === 'pdf'
    ? reply.type('application/pdf').send(Readable.from(drawingPdf(file), { objectMode: false }))
    : reply.type('image/svg+xml; charset=utf-8').send(drawingSvg(file));
}

/** Sends a drawing in DXF. */
export function sendDxf(reply: FastifyReply, { jobNumber, title }: SheetHead, file: string): FastifyReply {
  return reply
    .type('image/vnd.dxf')
    .header('content-disposition', `attachment; filename="${fileName(`${jobNumber} ${title}`)}.dxf"`)
    .header('cache-control', 'no-store')
    .send(file);
}
