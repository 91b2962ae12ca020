import type { JobDocument } from '../../document/job-document.ts';
import { connectedRuns } from '../../store/connected-runs.ts';
import type { Reader, Tx } from '../../store/database.ts';
import { readDesign, type Scope } from '../../store/designs.ts';

/** What a plan for several runs is made against. */
export interface Around {
  /** The runs asked for, all that they are joined to, and all that hang on the levels in question. */
  readonly job: JobDocument;
  /** Labels of every run of the job. */
  readonly taken: ReadonlySet<string>;
}

/** A database takes so many keys in one question at most, with room to spare; past that a design is read whole. */
const MOST_KEYS = 500;

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
  return { job: await readDesign(reader, projectId, await joinedScope(reader, projectId, near)), taken };
}

/** These runs and all that they are joined to, as a scope that any database can be asked for. */
export async function joinedScope(reader: Reader | Tx, projectId: string, runs: readonly string[]): Promise<Scope> {
  const scope = await connectedRuns(reader, projectId, runs);
  return scope.length > MOST_KEYS ? 'all' : scope;
}
