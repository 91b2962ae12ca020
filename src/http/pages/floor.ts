import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { pieceWord } from '../../../views/drawings/strip/words.ts';
import { FloorLive, FloorPage, type FloorPageProps, type FloorStopLine } from '../../../views/pages/field/floor.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { todoWords } from '../../../views/words/todo.ts';
import {
  type FieldFloor,
  type FieldFloorRun,
  fieldFloor,
  type NextThing,
  RUNS_SHOWN,
} from '../../actions/boards/field/field-floor.ts';
import type { FloorStop } from '../../actions/boards/field/floor-stops.ts';
import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { facesAt } from './field/facing.ts';
import { fieldRunHref, floorHref } from './field/field-sheet.ts';
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

/** Where a thing that is to be done is recorded. */
export function todoHref(
  jobId: string,
  levelId: string,
  runId: string,
  doing: NextThing['todo']['doing'],
  id: string | null,
): string {
  switch (doing) {
    case 'set-hanger':
      return cardHref(jobId, 'support', id ?? '');
    case 'hang-piece':
      return cardHref(jobId, 'piece', id ?? '');
    case 'make-joint':
    case 'accept-joint':
      return cardHref(jobId, 'joint', id ?? '');
    case 'set-tap':
    case 'check-tap':
      return cardHref(jobId, 'tap', id ?? '');
    case 'close-end':
    case 'close-slot':
      return `/jobs/${jobId}/runs/${runId}/ends`;
    case 'test-insulation':
      return `/jobs/${jobId}/runs/${runId}/insulation`;
    default:
      return fieldRunHref(jobId, levelId, runId);
  }
}

function stopLine(jobId: string, levelId: string, stop: FloorStop): FloorStopLine {
  const { kind, runId, runKey, thing, reason, by, at } = stop;
  const run = fieldRunHref(jobId, levelId, runId);
  const line = { key: `${kind} ${thing?.id ?? runId}`, reason, by, at };
  switch (kind) {
    case 'quarantined':
      return { ...line, what: `${thing?.mark} in quarantine`, href: cardHref(jobId, 'piece', thing?.id ?? '') };
    case 'reopened':
      return { ...line, what: `${thing?.mark} reopened`, href: cardHref(jobId, 'joint', thing?.id ?? '') };
    case 'not-released':
      return { ...line, what: `The office has not released ${runKey}`, href: run };
    case 'test-not-passed':
      return {
        ...line,
        what: `${runKey}: its insulation test is no pass`,
        reason: reason === null ? null : `Verdict: ${reason.replace('-', ' ')}.`,
        href: `/jobs/${jobId}/runs/${runId}/insulation`,
      };
    case 'test-stale':
      return {
        ...line,
        what: `${runKey}: work was done after its insulation test`,
        reason: 'The test counts no longer: test again.',
        href: `/jobs/${jobId}/runs/${runId}/insulation`,
      };
  }
}

/** Runs that wait for the office, in one line however many they are. */
function waitingLine(jobId: string, levelId: string, waiting: readonly FloorStop[]): FloorStopLine[] {
  const [first, ...more] = waiting;
  if (first === undefined) return [];
  const line = stopLine(jobId, levelId, first);
  if (more.length === 0) return [line];
  const names = waiting.slice(0, NAMED).map(({ runKey }) => runKey);
  const rest = waiting.length > NAMED ? ` and ${waiting.length - NAMED} more` : '';
  return [
    { ...line, what: `The office has not released ${waiting.length} runs`, reason: `${names.join(', ')}${rest}` },
  ];
}

const NAMED = 6;
