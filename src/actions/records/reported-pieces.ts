import { REPORTED_ACTIVITIES, type ReportedActivity } from '../../domain/quality/record.ts';
import { runFigures } from '../../domain/run-figures.ts';
import type { Context, Viewer } from '../context.ts';
import { reach } from '../reach.ts';
import { runDesignOf } from '../run-design.ts';
import { NOTHING_BUDGETED, type ReportedPieces } from './run-at.ts';

/**
 * How many pieces of work a run has in each activity that people report by count, from the labour budget of the design as it
 * stands. An activity that the labour book does not price is absent, and its counts are not judged.
 */
export async function reportedPieces(
  context: Context,
  viewer: Viewer,
  projectId: string,
  runId: string,
): Promise<ReportedPieces> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const known = await db.run.findFirst({ where: { projectId, id: runId }, select: { id: true } });
  if (known === null) return NOTHING_BUDGETED;
  const { job, run, layout } = await runDesignOf(db, projectId, runId);
  const pieces = new Map<ReportedActivity, number>();
  // Learning changes hours and no count, so any repeat will do.
  for (const line of runFigures(job, run, layout, 1).hours) {
    const activity = REPORTED_ACTIVITIES.find((reported) => reported === line.activity);
    if (activity !== undefined) pieces.set(activity, (pieces.get(activity) ?? 0) + line.pieces);
  }
  return pieces;
}
