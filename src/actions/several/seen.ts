import { z } from 'zod';
import type { Reader, Tx } from '../../store/database.ts';
import type { Context } from '../context.ts';
import { refuse } from '../refused.ts';

/** Versions of runs by their label, as they stood in a preview. */
export const seenSchema = z
  .record(z.string(), z.number().int())
  .describe('Versions of the runs that the preview showed.');
export type Seen = z.infer<typeof seenSchema>;

export async function seenOf(reader: Reader | Tx, projectId: string, keys: readonly string[]): Promise<Seen> {
  const rows = await reader.run.findMany({ where: { projectId }, select: { key: true, version: true } });
  const asked = new Set(keys);
  return Object.fromEntries(rows.filter(({ key }) => asked.has(key)).map(({ key, version }) => [key, version]));
}

/** Refuses what was decided on an older reading, and says which run changed, by whom and how long ago. */
export async function assertSeen(
  tx: Tx,
  context: Context,
  projectId: string,
  keys: readonly string[],
  seen: Seen,
): Promise<void> {
  const now = await seenOf(tx, projectId, keys);
  const changed = [...new Set([...Object.keys(now), ...Object.keys(seen)])].filter((key) => now[key] !== seen[key]);
  const [first] = changed;
  if (first === undefined) return;
  const more = changed.length === 1 ? '' : `, and ${changed.length - 1} more`;
  refuse({
    code: 'work-refused',
    what: 'Changed since you looked',
    number: `Run ${first} changed since this was shown${await byWhom(tx, context, projectId, first)}${more}.`,
    remedy: 'Nothing was written. Look at the preview as it is now, then go on.',
  });
}

/** ` (Jo Reed, 4 min ago)`, from the newest entry that can have changed this run's design. */
async function byWhom(tx: Tx, context: Context, projectId: string, key: string): Promise<string> {
  const run = await tx.run.findUnique({ where: { projectId_key: { projectId, key } }, select: { id: true } });
  const entry = await tx.auditEntry.findFirst({
    where: {
      chain: projectId,
      OR: [
        ...(run === null ? [] : [{ subject: 'run', subjectId: run.id }]),
        { subject: { in: ['project', 'level', 'busway-type'] } },
      ],
    },
    orderBy: { seq: 'desc' },
    select: { userName: true, at: true },
  });
  return entry === null ? '' : ` (${entry.userName}, ${sayAgo(context.clock().getTime() - entry.at.getTime())})`;
}

/** `sayAgo(250_000) = '4 min ago'`. */
export function sayAgo(ms: number): string {
  const minutes = Math.floor(Math.max(0, ms) / 60_000);
  if (minutes < 1) return 'just now';
  if (minutes < 60) return `${minutes} min ago`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${hours} h ago` : `${Math.floor(hours / 24)} days ago`;
}
