import type { FastifyReply, FastifyRequest } from 'fastify';
import { DrawnParts, TypedWords } from '../../../../views/pages/run-edit/drawn-run.tsx';
import { RowsOf } from '../../../../views/pages/run-edit/rows-of.tsx';
import { renderFragment } from '../../../../views/shell/page.tsx';
import type { Context } from '../../../actions/context.ts';
import { ROW_GROUPS } from '../../../document/run-form/entries.ts';
import { pasteName } from '../../../document/run-form/pasted.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { entered } from '../form.ts';
import { drawTyped, type TypedDrawing } from './draw-typed.ts';
import { drawingProps } from './drawing-props.ts';
import { type Asked, showRunForm } from './show-run-form.ts';

/**
 * The run as it is typed. To htmx go the parts that change: the words always, the drawing only when there is a new one, so
 * that the last good one stays. Without script the whole form comes back with it.
 */
export async function showDrawing(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  of: Pick<Asked, 'jobId' | 'runId'>,
): Promise<FastifyReply> {
  const viewer = viewerOf(request);
  const fields = entered(request);
  const typed = await drawTyped(context, viewer, of, fields);
  if (request.headers['hx-request'] !== 'true')
    return showRunForm(context, request, reply, { ...of, fields: typed.pasted.entered, typed });
  const props = drawingProps(typed);
  const parts = [
    partial('#typed-words', 'innerMorph', renderFragment(TypedWords(props))),
    ...(typed.drawn === null ? [] : [partial('#drawn', 'innerMorph', renderFragment(DrawnParts(props)))]),
    ...pastedParts(typed, fields),
  ];
  return reply.type('text/html; charset=utf-8').send(parts.join(''));
}

/** Rows that were pasted into a cell come back in their places. */
function pastedParts(typed: TypedDrawing, fields: Readonly<Record<string, string>>): string[] {
  const { pasted, project } = typed;
  return ROW_GROUPS.filter((group) => (fields[`${pasteName(group)}.at`] ?? '') !== '').map((group) => {
    const rows = RowsOf({
      group,
      entered: pasted.entered,
      faultOf: () => undefined,
      pasteFaults: pasted.faults,
      units: project.units,
    });
    return partial(`#${group}-rows`, 'outerHTML', renderFragment(rows));
  });
}

function partial(target: string, swap: string, html: string): string {
  return `<hx-partial hx-target="${target}" hx-swap="${swap}">${html}</hx-partial>`;
}
