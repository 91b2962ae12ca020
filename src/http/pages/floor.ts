import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { pieceWord } from '../../../views/drawings/strip/words.ts';
import { FloorLive, FloorPage, type FloorPageProps } from '../../../views/pages/field/floor.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { todoWords } from '../../../views/words/todo.ts';
import { type FieldFloor, type FieldFloorRun, fieldFloor, RUNS_SHOWN } from '../../actions/boards/field/field-floor.ts';
import type { NextThing } from '../../actions/boards/field/next-thing.ts';
import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { facesAt } from './field/facing.ts';
import { fieldRunHref, floorHref } from './field/field-sheet.ts';
import { stopLine, waitingLine } from './field/stop-lines.ts';
import { todoHref } from './field/todo-href.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { pagerOf, withQuery } from './pager.ts';

const params = z.object({ jobId: z.string(), levelId: z.string() });
const query = z.object({
  area: z.string().max(200).default(''),
  page: z.coerce.number().int().min(1).default(1).catch(1),
  part: z.string().optional(),
});

/** A floor on the phone. */
export function floor(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/floors/:levelId',
    { schema: { hide: true, params, querystring: query } },
    async (request, reply) => {
      const { jobId, levelId } = request.params;
      const board = await fieldFloor(context, viewerOf(request), jobId, levelId, request.query);
      const props = propsOf(jobId, board);
      if (request.query.part === 'floor')
        return reply.type('text/html; charset=utf-8').send(renderFragment(FloorLive(props)));
      return showFloor(context, request, reply, board, props);
    },
  );
}

function showFloor(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  { heading, level }: FieldFloor,
  props: FloorPageProps,
): FastifyReply {
  const { number, projectId } = heading.reached;
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, {
      title: level.name,
      part: 'floors',
      theme: 'field',
      trail: [{ word: number, href: `/jobs/${projectId}/floors` }],
    }),
    FloorPage(props),
  );
}

function propsOf(jobId: string, board: FieldFloor): FloorPageProps {
  const { heading, level, areas, area, whole, stops, runs, total, page } = board;
  const { units, timeZone } = heading.project;
  const path = floorHref(jobId, level.id);
  const say = { units, zone: timeZone ?? null };
  return {
    say,
    levelName: level.name,
    path,
    areas,
    area,
    whole,
    stops: [
      ...stops.filter(({ kind }) => kind !== 'not-released').map((stop) => stopLine(jobId, level.id, stop)),
      ...waitingLine(
        jobId,
        level.id,
        stops.filter(({ kind }) => kind === 'not-released'),
      ),
    ],
    runs: runs.map((run) => ({
      ...run,
      href: fieldRunHref(jobId, level.id, run.id),
      isReleased: run.revision > 0,
      next: run.next === null ? null : nextLine(jobId, level.id, run, run.next, say),
    })),
    pager:
      total > RUNS_SHOWN
        ? pagerOf({ items: runs, total, page, limit: RUNS_SHOWN }, 'runs', path, { area: area ?? '' })
        : null,
    liveHref: withQuery(path, { part: 'floor', area: area ?? '', page: String(page) }),
  };
}

function nextLine(jobId: string, levelId: string, run: FieldFloorRun, next: NextThing, say: FloorPageProps['say']) {
  const { todo, id, mark, at, length, kind, layout } = next;
  const words = todoWords(
    {
      todo,
      mark,
      at,
      length,
      piece: kind === null ? null : pieceWord(kind),
      faces: layout === null || at === null ? null : facesAt(layout, at),
    },
    say,
  );
  return { words, href: todoHref(jobId, levelId, run.id, todo.doing, id) };
}
