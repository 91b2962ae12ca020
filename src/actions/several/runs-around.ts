import type { JobDocument } from '../../document/job-document.ts';
import { connectedRuns } from '../../store/connected-runs.ts';
import type { Reader, Tx } from '../../store/database.ts';
import { readDesign } from '../../store/designs.ts';

/** What a plan for several runs is made against. */
export interface Around {
  /** The runs asked for, all that they are joined to, and all that hang on the levels in question. */
  readonly job: JobDocument;
  /** Labels of every run of the job. */
  readonly taken: ReadonlySet<string>;
}

/** The design around these runs. `onLevels`: with what else hangs on their levels and on these. */
export async function runsAround(
  reader: Reader | Tx,
  projectId: string,
  runs: readonly string[],
  onLevels: readonly string[] | null,
): Promise<Around> {
  const rows = await reader.run.findMany({
    where: { projectId },
    select: { key: true, level: { select: { key: true } } },
  });
  const taken = new Set(rows.map(({ key }) => key));
  const asked = new Set(await connectedRuns(reader, projectId, runs));
  const levels = new Set([
    ...(onLevels ?? []),
    ...(onLevels === null ? [] : rows.filter(({ key }) => asked.has(key)).map(({ level }) => level.key)),
  ]);
  const near = rows.filter(({ key, level }) => asked.has(key) || levels.has(level.key)).map(({ key }) => key);
  return { job: await readDesign(reader, projectId, await connectedRuns(reader, projectId, near)), taken };
}
