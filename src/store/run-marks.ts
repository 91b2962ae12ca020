import type { RunMarks } from '../domain/ordering/place-marks.ts';
import type { Reader } from './database.ts';

const inUse = { where: { retiredAt: null }, orderBy: { ordinal: 'asc' }, select: { mark: true } } as const;

/**
 * The marks that the floor has, by run, where they are not simply counted from the feed: runs that were released more than
 * once and whose design has not moved on since. A first release counts from the feed, and so does a draft.
 */
export async function runMarks(reader: Reader, projectId: string): Promise<ReadonlyMap<string, RunMarks>> {
  const runs = await reader.run.findMany({
    where: { projectId, revision: { gt: 1 }, changed: false },
    select: { key: true, pieces: inUse, joints: inUse, supports: inUse },
  });
  return new Map(
    runs.map(({ key, pieces, joints, supports }) => {
      const own = (rows: readonly { mark: string }[]) =>
        rows.map(({ mark }) => (mark.startsWith(`${key}-`) ? mark.slice(key.length + 1) : mark));
      return [key, { pieces: own(pieces), joints: own(joints), supports: own(supports) }];
    }),
  );
}
