import type { RunLayout } from '../../../domain/layout/result.ts';
import type { OpenPoint, RunStatus } from '../../../domain/quality/run-status.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../../domain/quality/states.ts';
import { nextTodo, type RunThings, workList } from '../../../domain/quality/work-list.ts';
import type { Length } from '../../../domain/units/length.ts';
import type { Reader } from '../../../store/database.ts';
import type { Context, Viewer } from '../../context.ts';
import { type JobHeading, jobHeading } from '../../job-heading.ts';
import { refuse } from '../../refused.ts';
import { type RunState, runStates } from '../../run-states.ts';
import { type FloorStop, floorStops } from './floor-stops.ts';
import { type NextThing, nextThing } from './next-thing.ts';
import { readThings, type ThingRows } from './read-things.ts';
import { sumOf, type Tally, tallyOf } from './tally.ts';

export const RUNS_SHOWN = 40;

export interface FieldFloorRun {
  readonly id: string;
  readonly key: string;
  readonly area: string | null;
  readonly length: Length;
  /** 0 until the run is released. */
  readonly revision: number;
  readonly status: RunStatus;
  readonly open: readonly OpenPoint[];
  readonly tally: Tally;
  readonly pieces: readonly { readonly from: Length; readonly to: Length; readonly state: PieceState }[];
  readonly joints: readonly { readonly at: Length; readonly state: JointState }[];
  readonly next: NextThing | null;
  /** How many more things can be begun now. */
  readonly alsoReady: number;
}

export interface FieldFloor {
  readonly heading: JobHeading;
  readonly level: { readonly id: string; readonly key: string; readonly name: string };
  readonly areas: readonly string[];
  readonly area: string | null;
  readonly whole: Tally;
  readonly stops: readonly FloorStop[];
  readonly runs: readonly FieldFloorRun[];
  readonly total: number;
  readonly page: number;
}

/** A floor as the people on it need it: the runs in order, what is next on each, and what stops the work. */
export async function fieldFloor(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
  asked: { readonly area: string; readonly page: number },
): Promise<FieldFloor> {
  const heading = await jobHeading(context, viewer, projectId);
  const { db } = context.database;
  const level = await db.level.findFirst({
    where: { projectId, id: levelId },
    select: { id: true, key: true, name: true },
  });
  if (level === null) return refuse({ code: 'not-found', what: 'floor' });
  const all = await db.run.findMany({
    where: { projectId, levelId },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true, area: true, lengthU80: true, revision: true },
  });
  const areas = [...new Set(all.flatMap(({ area }) => (area === null ? [] : [area])))];
  const area = areas.find((one) => one === asked.area) ?? null;
  const rows = all.filter((row) => area === null || row.area === area);
  const states = await runStates(
    db,
    projectId,
    rows.map((row) => row.id),
  );
  const first = (asked.page - 1) * RUNS_SHOWN;
  const shown = rows.slice(first, first + RUNS_SHOWN);
  const byId = new Map(states.map((state) => [state.id, state]));
  const [things, stops] = await Promise.all([
    readThings(
      db,
      shown.map((row) => row.id),
    ),
    floorStops(db, rows, states),
  ]);
  const runs = shown.flatMap((row): FieldFloorRun[] => {
    const state = byId.get(row.id);
    return state === undefined ? [] : [runOf(row, state, things)];
  });
  return {
    heading,
    level,
    areas,
    area,
    whole: sumOf(states.map(tallyOf)),
    stops,
    runs: await withLayouts(db, runs),
    total: rows.length,
    page: asked.page,
  };
}

interface RunRow {
  readonly id: string;
  readonly key: string;
  readonly area: string | null;
  readonly lengthU80: number;
  readonly revision: number;
}

function runOf(row: RunRow, state: RunState, rows: ThingRows): FieldFloorRun {
  const own = <R extends { readonly runId: string }>(all: readonly R[]) => all.filter(({ runId }) => runId === row.id);
  const [pieces, joints, supports, taps] = [own(rows.pieces), own(rows.joints), own(rows.supports), own(rows.taps)];
  const things: RunThings = {
    ...wholeOf(state),
    pieces: pieces.map((piece) => ({ state: piece.state as PieceState, from: piece.fromU80, to: piece.toU80 })),
    joints: joints.map((joint) => ({ state: joint.state as JointState, at: joint.atU80 })),
    supports: supports.map((support) => ({ state: support.state as SupportState })),
    taps: taps.map((tap) => ({ state: tap.state as TapState, at: tap.atU80 })),
  };
  const list = row.revision === 0 ? [] : workList(things);
  const next = nextTodo(list);
  return {
    id: row.id,
    key: row.key,
    area: row.area,
    length: row.lengthU80,
    revision: row.revision,
    status: state.status,
    open: state.open,
    tally: tallyOf(state),
    pieces: things.pieces,
    joints: things.joints,
    next: next === null ? null : nextThing(next, row, { pieces, joints, supports, taps }),
    alsoReady: Math.max(0, list.filter(({ ready }) => ready).length - 1),
  };
}

/** What belongs to the run as a whole. */
export function wholeOf({ card, slot, test, open }: RunState): Pick<RunThings, 'openEnds' | 'slot' | 'test'> {
  const isDue = test === null || test.verdict !== 'pass' || open.some(({ code }) => code === 'test-stale');
  return {
    openEnds: card.ends.filter(({ closed }) => closed === null).map(({ end }) => end),
    slot,
    test: isDue ? 'due' : 'passed',
  };
}

/** Layouts are large, so they are read only where a piece is next and its side must be said. */
async function withLayouts(reader: Reader, runs: readonly FieldFloorRun[]): Promise<readonly FieldFloorRun[]> {
  const hanging = runs.filter(({ next }) => next?.todo.doing === 'hang-piece');
  if (hanging.length === 0) return runs;
  const rows = await reader.runRevision.findMany({
    where: { OR: hanging.map(({ id, revision }) => ({ runId: id, number: revision })) },
    select: { runId: true, layout: true },
  });
  const layouts = new Map(rows.map((row) => [row.runId, row.layout as unknown as RunLayout]));
  return runs.map((run) =>
    run.next === null ? run : { ...run, next: { ...run.next, layout: layouts.get(run.id) ?? null } },
  );
}
