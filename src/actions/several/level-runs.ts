import { floorPlans, type PlannedRun } from '../boards/floor-plans.ts';
import type { Context, Viewer } from '../context.ts';
import { reach } from '../reach.ts';

/** What hangs on a level already, drawn as far as a plan of so many runs can be read. */
export async function levelRuns(
  context: Context,
  viewer: Viewer,
  projectId: string,
  level: string,
  most: number,
): Promise<{ readonly runs: readonly PlannedRun[]; readonly total: number }> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const rows = await db.run.findMany({
    where: { projectId, level: { key: level } },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true },
  });
  return { runs: await floorPlans(context, rows.slice(0, most)), total: rows.length };
}

/** The levels that these runs hang on. */
export async function levelsOf(
  context: Context,
  viewer: Viewer,
  projectId: string,
  keys: readonly string[],
): Promise<ReadonlySet<string>> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const rows = await db.run.findMany({ where: { projectId }, select: { key: true, level: { select: { key: true } } } });
  const asked = new Set(keys);
  return new Set(rows.filter(({ key }) => asked.has(key)).map(({ level }) => level.key));
}
