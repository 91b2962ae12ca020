import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { compassWord } from '../../../views/drawings/compass.ts';
import type { WalkOf } from '../../../views/pages/field/run/walk-form.tsx';
import {
  FieldRunLive,
  FieldRunPage,
  type FieldRunPageProps,
  UnreleasedRunPage,
} from '../../../views/pages/field/run.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { type FieldRun, fieldRun, type ReleasedRun } from '../../actions/boards/field/field-run.ts';
import { tallyOf } from '../../actions/boards/field/tally.ts';
import type { Context } from '../../actions/context.ts';
import type { JointState, PieceState } from '../../domain/quality/states.ts';
import { nextTodo } from '../../domain/quality/work-list.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { shortMark } from './field/along.ts';
import { fieldEntries } from './field/entries.ts';
import { fieldRunHref, fieldSheet, floorHref } from './field/field-sheet.ts';
import { GROUPS, nextOf } from './field/run-next.ts';
import { rowsOf } from './field/run-rows.ts';
import { walksOf } from './field/run-walks.ts';
import { stripRecordOf } from './field/strip-record.ts';
import { formDoes, type PageTrouble } from './field/take-record.ts';
import { takeWalk } from './field/walk.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), levelId: z.string(), runId: z.string() });
const query = z.object({ part: z.string().optional(), done: z.string().optional() });
const WALKS: readonly WalkOf[] = ['hangers', 'accept-hangers', 'pieces', 'taps'];

/** One run on the phone. */
export function fieldRunPage(app: App, context: Context): void {
  const schema = { hide: true, params, querystring: query };
  const path = '/jobs/:jobId/floors/:levelId/runs/:runId';

  app.get(path, { schema }, async (request, reply) => {
    if (request.query.part !== 'run') return show(context, request, reply, null);
    const { jobId, runId } = request.params;
    const board = await fieldRun(context, viewerOf(request), jobId, runId);
    const props = propsOf(context, reply, board, null);
    return reply.type('text/html; charset=utf-8').send(props === null ? '' : renderFragment(FieldRunLive(props)));
  });

  app.post(path, { schema }, async (request, reply) => {
    const { jobId, levelId, runId } = request.params;
    const does = WALKS.find((walk) => walk === formDoes(request)) ?? 'hangers';
    const { released } = await fieldRun(context, viewerOf(request), jobId, runId);
    const rows =
      released === null ? [] : [...released.floor.supports, ...released.floor.pieces, ...released.floor.taps];
    const markOf = (id: string) => {
      const row = rows.find((one) => one.id === id);
      return row === undefined
        ? 'one thing'
        : shortMark(released?.floor ?? { key: '' }, 'mark' in row ? row.mark : row.key);
    };
    const walked = await takeWalk(context, request, jobId, fieldEntries(request), { does, markOf });
    if (!walked.ok) return show(context, request, reply, walked.trouble);
    return goTo(reply, fieldRunHref(jobId, levelId, runId), `${walked.count} recorded.`);
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, runId } = params.parse(request.params);
  const board = await fieldRun(context, viewerOf(request), jobId, runId);
  const { where } = board;
  const props = propsOf(context, reply, board, trouble);
  const sheet = fieldSheet(context, where, {
    title: `Run ${where.run.key}`,
    trouble,
    trail: fieldSheet(context, where, { title: '' }).trail?.slice(0, 2) ?? [],
  });
  const links = {
    officeHref: `/jobs/${jobId}/runs/${runId}`,
    floor: { href: floorHref(jobId, where.level.id), mark: where.level.name },
  };
  return sendPage(request, reply, sheet, props === null ? UnreleasedRunPage(links) : FieldRunPage(props));
}

function propsOf(
  context: Context,
  reply: FastifyReply,
  board: FieldRun,
  trouble: PageTrouble | null,
): FieldRunPageProps | null {
  const { where, released } = board;
  if (released === null) return null;
  const { floor, state, todos } = released;
  const { reached, project } = where.heading;
  const jobId = reached.projectId;
  const say = { units: project.units, zone: project.timeZone ?? null };
  const next = nextTodo(todos);
  return {
    path: fieldRunHref(jobId, where.level.id, floor.id),
    csrf: formToken(reply),
    freshId: context.newId(),
    say,
    run: floor.run,
    layout: floor.layout,
    record: stripRecordOf(jobId, floor),
    bar: {
      pieces: floor.pieces.map((row) => ({ from: row.fromU80, to: row.toU80, state: row.state as PieceState })),
      joints: floor.joints.map((row) => ({ at: row.atU80, state: row.state as JointState })),
    },
    status: state.status,
    changed: floor.changed,
    faces: facesOf(released),
    tally: tallyOf(state),
    next: next === null ? null : nextOf(where, released, next),
    nextGroup: next === null ? null : GROUPS[next.doing],
    ...rowsOf(jobId, released, say.units),
    walk: walksOf(board, released, say.units),
    viewer: { mayInstall: reached.may('install'), mayAccept: reached.may('inspect') },
    trouble,
    officeHref: `/jobs/${jobId}/runs/${floor.id}`,
    floor: { href: floorHref(jobId, where.level.id), mark: where.level.name },
  };
}

/** "NORTH", or leg by leg round a corner. */
function facesOf({ floor }: ReleasedRun): string | null {
  const { facing } = floor.layout;
  const words = facing.map(({ compassDeg }) => compassWord(compassDeg).toUpperCase());
  const same = words.every((word) => word === words[0]);
  if (same) return words[0] ?? null;
  return facing.map(({ leg }, index) => `${words[index]} on leg ${leg}`).join(', ');
}
