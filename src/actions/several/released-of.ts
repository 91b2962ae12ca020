import type { Reader, Tx } from '../../store/database.ts';

/** Those of these runs that were released: a change of their design reaches the floor at the next release only. */
export async function releasedOf(
  reader: Reader | Tx,
  projectId: string,
  keys: readonly string[],
): Promise<readonly string[]> {
  const rows = await reader.run.findMany({ where: { projectId, revision: { gt: 0 } }, select: { key: true } });
  const asked = new Set(keys);
  return rows.map(({ key }) => key).filter((key) => asked.has(key));
}
