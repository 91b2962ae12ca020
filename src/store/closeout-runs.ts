import { setImmediate } from 'node:timers/promises';
import type { Reader } from './database.ts';

/** Runs of one page: enough that the database is asked seldom, few enough that a page of long runs stays small. */
const PER_PAGE = 6;

export interface RunPlace {
  readonly id: string;
  readonly key: string;
  readonly levelId: string;
  /** The run that it is teed from. */
  readonly parentKey: string | null;
}

/** A job's runs in the order of the closeout: level by level in the order of work, then in document order. */
export async function runsInOrder(reader: Reader, projectId: string): Promise<RunPlace[]> {
  return reader.run.findMany({
    where: { projectId },
    orderBy: [{ level: { ordinal: 'asc' } }, { level: { key: 'asc' } }, { ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true, levelId: true, parentKey: true },
  });
}

/** One run whole: design, what was released, and every record in the order in which it reached the book. */
export type CloseoutRun = Awaited<ReturnType<typeof readPage>>[number];

/** With every record, or as the rows stand, which is all that a drawing needs. */
export type CloseoutDepth = 'records' | 'states';

/** The runs in the order given, a page at a time, so that a job of thousands is never held whole. */
export async function* closeoutRuns(
  reader: Reader,
  runs: readonly RunPlace[],
  depth: CloseoutDepth,
): AsyncGenerator<CloseoutRun> {
  for (let first = 0; first < runs.length; first += PER_PAGE) {
    const ids = runs.slice(first, first + PER_PAGE).map((run) => run.id);
    const page = new Map((await readPage(reader, ids, depth)).map((row) => [row.id, row]));
    for (const id of ids) {
      const row = page.get(id);
      if (row !== undefined) yield row;
      await setImmediate(); // what is made of a run takes long enough that others must be served in between
    }
  }
}

function readPage(reader: Reader, ids: readonly string[], depth: CloseoutDepth) {
  const standing = { where: { retiredAt: null }, orderBy: [{ ordinal: 'asc' as const }, { id: 'asc' as const }] };
  return reader.run.findMany({
    where: { id: { in: [...ids] } },
    include: {
      level: { select: { key: true, name: true } },
      type: { select: { spec: true } },
      pieces: standing,
      joints: standing,
      supports: standing,
      taps: standing,
      revisions: { orderBy: { number: 'desc' }, take: 1 },
      inspections: { orderBy: { seq: 'asc' }, ...(depth === 'records' ? {} : { take: 0 }) },
    },
  });
}
