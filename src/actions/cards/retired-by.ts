import type { Context } from '../context.ts';

/** The revision that took a thing out of its run; null for what was retired in another way. */
export async function retiredBy(context: Context, runId: string, retiredAt: Date) {
  const { db } = context.database;
  const row = await db.runRevision.findFirst({
    where: { runId, at: retiredAt },
    orderBy: { number: 'desc' },
    select: { number: true, mark: true, reason: true, byUserId: true },
  });
  if (row === null) return null;
  const by = await db.user.findUnique({ where: { id: row.byUserId }, select: { name: true } });
  return {
    number: row.number,
    field: row.mark === 'field',
    reason: row.reason,
    byName: by?.name ?? 'a closed account',
  };
}
