import type { Reader } from './database.ts';

/**
 * These runs with every run that their documents name or that names them, over any number of tees and pairs: a design of
 * them alone is whole.
 */
export async function connectedRuns(reader: Reader, projectId: string, keys: readonly string[]): Promise<string[]> {
  const rows = await reader.run.findMany({
    where: { projectId, OR: [{ parentKey: { not: null } }, { pairedKey: { not: null } }] },
    select: { key: true, parentKey: true, pairedKey: true },
  });
  const beside = new Map<string, string[]>();
  const join = (a: string, b: string) => {
    const known = beside.get(a);
    if (known) known.push(b);
    else beside.set(a, [b]);
  };
  for (const { key, parentKey, pairedKey } of rows)
    for (const other of [parentKey, pairedKey]) {
      if (other === null) continue;
      join(key, other);
      join(other, key);
    }
  const reached = new Set(keys);
  for (const at of reached) for (const other of beside.get(at) ?? []) reached.add(other);
  return [...reached];
}
