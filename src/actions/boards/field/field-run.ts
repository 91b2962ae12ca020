import type { JointState, PieceState, SupportState, TapState } from '../../../domain/quality/states.ts';
import { type Todo, workList } from '../../../domain/quality/work-list.ts';
import { type FloorRun, readFloorRun } from '../../../store/floor-run.ts';
import type { Context, Viewer } from '../../context.ts';
import { type RunState, runStates } from '../../run-states.ts';
import { wholeOf } from './field-floor.ts';
import { type WhereOnFloor, whereOnFloor } from './where-on-floor.ts';

/** A run as it was released last, how far it is, and what is left to do. */
export interface ReleasedRun {
  readonly floor: FloorRun;
  readonly state: RunState;
  readonly todos: readonly Todo[];
}

/** One run as the people on the floor need it. */
export interface FieldRun {
  readonly where: WhereOnFloor;
  /** null until the office releases it. */
  readonly released: ReleasedRun | null;
  /** Hangers that this person set, and so does not accept. */
  readonly ownHangers: ReadonlySet<string>;
}

export async function fieldRun(context: Context, viewer: Viewer, projectId: string, runId: string): Promise<FieldRun> {
  const where = await whereOnFloor(context, viewer, projectId, runId);
  const { db } = context.database;
  const [floor, [state], own] = await Promise.all([
    readFloorRun(db, projectId, runId),
    runStates(db, projectId, [runId]),
    db.inspection.findMany({
      where: { runId, kind: 'support-set', byUserId: viewer.userId },
      select: { subjectId: true },
    }),
  ]);
  const ownHangers = new Set(own.map(({ subjectId }) => subjectId));
  if (floor === null || state === undefined) return { where, released: null, ownHangers };
  const todos = workList({
    ...wholeOf(state),
    pieces: floor.pieces.map(({ state: piece, fromU80: from, toU80: to }) => ({
      state: piece as PieceState,
      from,
      to,
    })),
    joints: floor.joints.map(({ state: joint, atU80: at }) => ({ state: joint as JointState, at })),
    supports: floor.supports.map(({ state: support }) => ({ state: support as SupportState })),
    taps: floor.taps.map(({ state: tap, atU80: at }) => ({ state: tap as TapState, at })),
  });
  return { where, released: { floor, state, todos }, ownHangers };
}
