import { z } from 'zod';
import type { Underlay } from '../../../views/drawings/floor-plan.tsx';
import { headLines } from '../../../views/drawings/sheet/head.ts';
import { printPlan } from '../../../views/drawings/sheet/plan-sheets.tsx';
import { printStrip } from '../../../views/drawings/sheet/strip-sheets.tsx';
import { type LevelPlan, levelPlan } from '../../actions/boards/level-plan.ts';
import { paperBackground } from '../../actions/boards/plan-background.ts';
import { type RunBoard, runBoard } from '../../actions/boards/run-board.ts';
import type { Context } from '../../actions/context.ts';
import { PICTURE } from '../../paper/drawings/drawing-pdf.ts';
import { planDxf } from '../../paper/drawings/plan-dxf.ts';
import { stripDxf } from '../../paper/drawings/strip-dxf.ts';
import type { App } from '../app-type.ts';
import { PICTURE_NOTE, planHead, stripHead } from '../drawing-heads.ts';
import { chosenPrint, drawingQuery } from '../drawing-query.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { sendDrawing, sendDxf } from '../send-drawing.ts';
import { runParams } from './run.ts';

export const levelParams = z.object({ jobId: z.string(), levelId: z.string() });
/** A plan's print has the picture under it only when it is asked for. */
const planQuery = drawingQuery.extend({ picture: z.enum(['light', 'full', 'none']).catch('none') });
const stripQuery = drawingQuery.extend({ of: z.enum(['floor', 'design']).catch('design') });

/** Strips and plans as files to print: PDF and SVG at a true scale. */
export function drawings(app: App, context: Context): void {
  dxfFiles(app, context);
  for (const kind of ['pdf', 'svg'] as const) {
    app.get(
      `/jobs/:jobId/runs/:runId/strip.${kind}`,
      { schema: { hide: true, params: runParams, querystring: stripQuery } },
      async (request, reply) => {
        const { jobId, runId } = request.params;
        const board = await runBoard(context, viewerOf(request), jobId, runId);
        const { units } = board.heading.project;
        const chosen = chosenPrint(request.query, units);
        const head = stripHead(board, request.query.of, context.clock());
        const strip = { ...drawnOf(board, request.query.of), units };
        return sendDrawing(reply, kind, { head, chosen, printed: printStrip({ strip, head, ...chosen }) });
      },
    );

    app.get(
      `/jobs/:jobId/floors/:levelId/plan.${kind}`,
      { schema: { hide: true, params: levelParams, querystring: planQuery } },
      async (request, reply) => {
        const { jobId, levelId } = request.params;
        const plan = await levelPlan(context, viewerOf(request), jobId, levelId);
        const { units } = plan.heading.project;
        const chosen = chosenPrint(request.query, units);
        const shown = request.query.picture === 'none' ? {} : await pictureUnder(context, plan);
        const head = planHead(plan, context.clock(), shown.underlay === undefined ? [] : [PICTURE_NOTE]);
        const { underlay, picture } = shown;
        const under = underlay === undefined ? {} : { underlay };
        return sendDrawing(reply, kind, {
          head,
          chosen,
          picture,
          printed: printPlan({ runs: plan.runs, units, head, ...chosen, ...under }),
        });
      },
    );
  }
}

/** The paler copy of the picture and its place, where the plan has one. */
async function pictureUnder(
  context: Context,
  { level, background }: LevelPlan,
): Promise<{ readonly underlay?: Underlay; readonly picture?: Uint8Array }> {
  const picture = background?.placed ? await paperBackground(context.database.db, level.id) : null;
  if (picture === null || !background?.placed) return {};
  const { width, height, placed } = background;
  return { picture, underlay: { href: PICTURE, width, height, placed, strength: 1 } };
}

/** The same as DXF in the true size of the building, for whoever draws on. */
function dxfFiles(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/runs/:runId/strip.dxf',
    { schema: { hide: true, params: runParams, querystring: stripQuery } },
    async (request, reply) => {
      const { jobId, runId } = request.params;
      const board = await runBoard(context, viewerOf(request), jobId, runId);
      const { units } = board.heading.project;
      const head = stripHead(board, request.query.of, context.clock());
      return sendDxf(reply, head, stripDxf({ ...drawnOf(board, request.query.of), units }, headLines(head)));
    },
  );

  app.get(
    '/jobs/:jobId/floors/:levelId/plan.dxf',
    { schema: { hide: true, params: levelParams } },
    async (request, reply) => {
      const { jobId, levelId } = request.params;
      const plan = await levelPlan(context, viewerOf(request), jobId, levelId);
      const head = planHead(plan, context.clock());
      return sendDxf(reply, head, planDxf(plan.runs, plan.heading.project.units, headLines(head)));
    },
  );
}

/** What the floor has, with the marks of its pieces; or the design as it stands. */
function drawnOf({ run, layout, released, standing }: RunBoard, of: 'floor' | 'design') {
  if (released === null || (of === 'design' && standing.changed)) return { run, layout };
  const { pieces, joints, supports, taps } = released;
  return {
    run: released.run,
    layout: released.layout,
    record: { pieces, joints, supports, taps: Object.fromEntries(taps.map((tap) => [tap.mark, tap])) },
  };
}
