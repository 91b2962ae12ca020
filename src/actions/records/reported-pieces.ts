import { REPORTED_ACTIVITIES, type ReportedActivity } from '../../domain/quality/record.ts';
import type { Context, Viewer } from '../context.ts';
import { figuresOf } from '../figures.ts';
import { reach } from '../reach.ts';
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
  const run = await db.run.findFirst({ where: { projectId, id: runId }, select: { key: true } });
  if (run === null) return NOTHING_BUDGETED;
  const { figures } = await figuresOf(db, projectId);
  const pieces = new Map<ReportedActivity, number>();
  for (const line of figures.labour?.lines ?? []) {
    const activity = REPORTED_ACTIVITIES.find((reported) => reported === line.activity);
    if (line.run === run.key && activity !== undefined) {
      pieces.set(activity, (pieces.get(activity) ?? 0) + line.pieces);
    }
  }
  return pieces;
}
