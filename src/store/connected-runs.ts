import type { Reader } from './database.ts';
import { inChunks } from './in-chunks.ts';

/** What joins two runs: a tee is one conductor, a pair stands beside. */
type Joined = 'tees' | 'tees and pairs';

/**
 * These runs with every run that is joined to them, over any number of tees and pairs: a design of them alone is whole. Read
 * outwards from these runs, so that it costs what hangs together and not what the job holds.
 */
export async function connectedRuns(
  reader: Reader,
  projectId: string,
  keys: readonly string[],
  by: Joined = 'tees and pairs',
): Promise<string[]> {
  const reached = new Set(keys);
  for (let edge = [...reached]; edge.length > 0; ) {
    const found = await namesAround(reader, projectId, edge, by);
    edge = [...new Set(found)].filter((key) => !reached.has(key));
    for (const key of edge) reached.add(key);
  }
  return [...reached];
}

/** The labels of these runs, of those that they name, and of those that name them. */
async function namesAround(reader: Reader, projectId: string, keys: readonly string[], by: Joined): Promise<string[]> {
  const isPaired = by === 'tees and pairs';
  const read = (chunk: string[]) => {
    // The project stands in each of the three: SQLite else walks through all its runs instead of asking three indexes.
    const these = (column: 'key' | 'parentKey' | 'pairedKey') => ({ projectId, [column]: { in: chunk } });
    return reader.run.findMany({
      where: { OR: [these('key'), these('parentKey'), ...(isPaired ? [these('pairedKey')] : [])] },
      select: { key: true, parentKey: true, pairedKey: true },
    });
  };
  const rows = await inChunks(keys, read, 3);
  return rows.flatMap(({ key, parentKey, pairedKey }) =>
    [key, parentKey, isPaired ? pairedKey : null].filter((name) => name !== null),
  );
}
