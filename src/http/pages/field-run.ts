import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { type CardOf, cardHref } from '../../../views/components/card-href.ts';
import { compassWord } from '../../../views/drawings/compass.ts';
import { handWords, pieceWord } from '../../../views/drawings/strip/words.ts';
import type { GroupOf } from '../../../views/pages/field/run/group.tsx';
import type { WalkItem, WalkOf } from '../../../views/pages/field/run/walk-form.tsx';
import {
  FieldRunLive,
  FieldRunPage,
  type FieldRunPageProps,
  UnreleasedRunPage,
} from '../../../views/pages/field/run.tsx';
import type { ThingRow } from '../../../views/pages/field/thing-rows.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { endWord } from '../../../views/words/record-summary.ts';
import { verdictWord } from '../../../views/words/run-status.ts';
import { todoWords } from '../../../views/words/todo.ts';
import { type FieldRun, fieldRun } from '../../actions/boards/field/field-run.ts';
import { tallyOf } from '../../actions/boards/field/tally.ts';
import type { Context } from '../../actions/context.ts';
import { toTap } from '../../document/model/to-tap.ts';
import type { TapDocument } from '../../document/schema/tap.ts';
import type { PlacedPiece, RunLayout } from '../../domain/layout/result.ts';
import type { UnitSystem } from '../../domain/model.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import { nextTodo, type Todo } from '../../domain/quality/work-list.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { shortMark } from './field/along.ts';
import { fieldEntries } from './field/entries.ts';
import { facesAt } from './field/facing.ts';
import { fieldRunHref, fieldSheet, floorHref } from './field/field-sheet.ts';
import { formDoes, type PageTrouble } from './field/take-record.ts';
import { takeWalk } from './field/walk.ts';
import { todoHref } from './floor.ts';
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

type Released = NonNullable<FieldRun['released']>;

const GROUPS: Readonly<Record<Todo['doing'], GroupOf>> = {
  'set-hanger': 'hangers',
  'hang-piece': 'pieces',
  'make-joint': 'joints',
  'accept-joint': 'joints',
  'close-end': 'ends',
  'close-slot': 'ends',
  'set-tap': 'taps',
  'check-tap': 'taps',
  'test-insulation': 'tests',
};

/** "NORTH", or leg by leg round a corner. */
function facesOf({ floor }: Released): string | null {
  const { facing } = floor.layout;
  const words = facing.map(({ compassDeg }) => compassWord(compassDeg).toUpperCase());
  const same = words.every((word) => word === words[0]);
  if (same) return words[0] ?? null;
  return facing.map(({ leg }, index) => `${words[index]} on leg ${leg}`).join(', ');
}

/** The thing that a step of the list speaks of. */
function thingOf({ floor }: Released, todo: Todo) {
  const none = { id: null, mark: null, at: null, length: null, piece: null, faces: null };
  switch (todo.doing) {
    case 'set-hanger': {
      const row = floor.supports[todo.index];
      return {
        ...none,
        id: row?.id ?? null,
        mark: row === undefined ? null : shortMark(floor, row.mark),
        at: row?.atU80 ?? null,
      };
    }
    case 'hang-piece': {
      const [row, placed] = [floor.pieces[todo.index], floor.layout.pieces[todo.index]];
      if (row === undefined || placed === undefined) return none;
      const { from, to, kind } = placed;
      const faces = facesAt(floor.layout, from);
      return {
        id: row.id,
        mark: shortMark(floor, row.mark),
        at: from,
        length: to - from,
        piece: pieceWord(kind),
        faces,
      };
    }
    case 'make-joint':
    case 'accept-joint': {
      const row = floor.joints[todo.index];
      return {
        ...none,
        id: row?.id ?? null,
        mark: row === undefined ? null : shortMark(floor, row.mark),
        at: row?.atU80 ?? null,
      };
    }
    case 'set-tap':
    case 'check-tap': {
      const row = floor.taps[todo.index];
      return { ...none, id: row?.id ?? null, mark: row?.key ?? null, at: row?.atU80 ?? null };
    }
    case 'close-end':
    case 'close-slot':
    case 'test-insulation':
      return none;
  }
}

function nextOf({ heading, level, run }: FieldRun['where'], released: Released, todo: Todo): FieldRunPageProps['next'] {
  const { units, timeZone } = heading.project;
  const thing = thingOf(released, todo);
  const words = todoWords({ todo, ...thing }, { units, zone: timeZone ?? null });
  const href = todoHref(heading.reached.projectId, level.id, run.id, todo.doing, thing.id);
  return { what: words, href, go: thing.mark === null ? 'Open it' : `Card of ${thing.mark}` };
}

function stripRecordOf(jobId: string, floor: Released['floor']): FieldRunPageProps['record'] {
  const item = (of: CardOf) => (row: { readonly id: string; readonly mark: string }) => ({
    mark: row.mark,
    href: cardHref(jobId, of, row.id),
  });
  return {
    pieces: floor.pieces.map((row) => ({ ...item('piece')(row), state: row.state as PieceState })),
    joints: floor.joints.map((row) => ({ ...item('joint')(row), state: row.state as JointState })),
    supports: floor.supports.map((row) => ({ ...item('support')(row), state: row.state as SupportState })),
    taps: Object.fromEntries(
      floor.taps.map((row) => [
        row.key,
        { mark: row.key, href: cardHref(jobId, 'tap', row.id), state: row.state as TapState },
      ]),
    ),
  };
}

type Rows = Pick<FieldRunPageProps, 'hangers' | 'pieces' | 'joints' | 'ends' | 'taps' | 'tests'>;

function rowsOf(jobId: string, released: Released, units: UnitSystem): Rows {
  const { floor, state } = released;
  const { layout, type } = floor;
  const steps = type.joint.steps?.length ?? 0;
  const whole = `/jobs/${jobId}/runs/${floor.id}`;
  return {
    hangers: floor.supports.map((row) => ({
      id: row.id,
      href: cardHref(jobId, 'support', row.id),
      mark: shortMark(floor, row.mark),
      what: `${row.measuredU80 === null ? 'at' : 'measured at'} ${formatLength(row.measuredU80 ?? row.atU80, units)}`,
      state: row.state as SupportState,
    })),
    pieces: floor.pieces.map((row, index) => ({
      id: row.id,
      href: cardHref(jobId, 'piece', row.id),
      mark: shortMark(floor, row.mark),
      what: pieceWhat(layout.pieces[index], layout, units),
      state: row.state as PieceState,
    })),
    joints: floor.joints.map((row) => ({
      id: row.id,
      href: cardHref(jobId, 'joint', row.id),
      mark: shortMark(floor, row.mark),
      what: `at ${formatLength(row.atU80, units)}${jointProgress(row, steps)}`,
      state: row.state as JointState,
    })),
    taps: floor.taps.map((row) => ({
      id: row.id,
      href: cardHref(jobId, 'tap', row.id),
      mark: row.key,
      what: `at ${formatLength(row.atU80, units)}, ${toTap(row.spec as unknown as TapDocument).phases}`,
      state: row.state as TapState,
    })),
    ends: [
      ...state.card.ends.map(({ end, closed }) => ({
        id: end,
        href: `${whole}/ends`,
        mark: end,
        what: `${endWord(end)} with its cap`,
        state: closed === null ? ('open' as const) : ('closed' as const),
      })),
      {
        id: 'slot',
        href: `${whole}/ends`,
        mark: 'slot',
        what: 'unused slot closed',
        state: state.card.slot === null ? ('open' as const) : ('closed' as const),
      },
    ],
    tests: [testRow(`${whole}/insulation`, released)],
  };
}

function jointProgress(
  { state, stepsDone }: { readonly state: string; readonly stepsDone: number },
  steps: number,
): string {
  return state === 'accepted' || stepsDone === 0 ? '' : `, ${stepsDone} of ${steps} steps`;
}

function pieceWhat(piece: PlacedPiece | undefined, layout: RunLayout, units: UnitSystem): string {
  if (piece === undefined) return '';
  const faces = facesAt(layout, piece.from);
  return [
    `${pieceWord(piece.kind)} ${formatLength(piece.to - piece.from, units)}`,
    ...(piece.hand === null ? [] : [handWords(piece.hand)]),
    ...(faces === null ? [] : [`taps face ${faces.toUpperCase()}`]),
  ].join(', ');
}

function testRow(href: string, { state }: Released): ThingRow {
  const { test, open } = state;
  const isStale = open.some(({ code }) => code === 'test-stale');
  const row = { id: 'insulation', href, mark: 'IR', what: 'insulation, all pairs' };
  if (test === null) return { ...row, state: 'planned', word: 'to do' };
  if (isStale) return { ...row, state: 'reopened', word: 'stale' };
  return { ...row, state: test.verdict === 'pass' ? 'accepted' : 'fault', word: verdictWord(test.verdict) };
}

function walksOf({ ownHangers }: FieldRun, { floor }: Released, units: UnitSystem): FieldRunPageProps['walk'] {
  const place = (row: {
    readonly id: string;
    readonly version: number;
    readonly mark: string;
    readonly atU80: number;
  }): WalkItem => ({
    id: row.id,
    version: row.version,
    mark: shortMark(floor, row.mark),
    what: `at ${formatLength(row.atU80, units)}`,
  });
  const isAtPlan = ({ state }: { readonly state: string }) => state === 'planned';
  return {
    hangers: floor.supports.filter(isAtPlan).map(place),
    hangersToAccept: floor.supports.filter(({ id, state }) => state === 'set' && !ownHangers.has(id)).map(place),
    pieces: floor.pieces.filter(isAtPlan).map((row) => ({
      id: row.id,
      version: row.version,
      mark: shortMark(floor, row.mark),
      what: formatLength(row.toU80 - row.fromU80, units),
    })),
    taps: floor.taps.filter(isAtPlan).map((row) => place({ ...row, mark: row.key })),
  };
}
