import type { RunDocument } from '../document/job-document.ts';
import type { Reader } from './database.ts';

/** A run as it is typed, and its own row when it has one. */
export interface TypedRun {
  readonly rowId: string | null;
  /** Its label in the design; null for a new run. */
  readonly key: string | null;
  readonly document: RunDocument;
}

export interface RunsBeside {
  /** What the typed run's layout and its check depend on, in document order, as the design has it. */
  readonly runs: readonly RunDocument[];
  /** Another run has the typed label. */
  readonly isTaken: boolean;
}

/**
 * The few runs that one run depends on: its pair, whatever it is teed from up to the top, and what is teed from it. Unlike a
 * saved change it does not read what hangs further off, so that it stays quick however many runs a job has.
 */
export async function runsBeside(reader: Reader, projectId: string, typed: TypedRun): Promise<RunsBeside> {
  const { document, key, rowId } = typed;
  const found = new Map<string, Row>();
  const named = [document.pairedRun, document.feed?.fromRun, document.id].filter((name) => name !== undefined);
  const rows = await read(reader, projectId, [
    { key: { in: named } },
    ...(key === null ? [] : [{ parentKey: key }, { pairedKey: key }]),
  ]);
  for (const row of rows) found.set(row.key, row);
  for (let above = parentsOf(rows, found); above.length > 0; ) {
    const next = await read(reader, projectId, [{ key: { in: above } }]);
    for (const row of next) found.set(row.key, row);
    above = parentsOf(next, found);
  }
  const own = (row: Row) => row.id === rowId;
  const isTaken = [...found.values()].some((row) => row.key === document.id && !own(row));
  const beside = [...found.values()].filter((row) => !own(row) && row.key !== document.id);
  return { isTaken, runs: beside.sort((a, b) => a.ordinal - b.ordinal).map(({ spec }) => spec) };
}

interface Row {
  readonly id: string;
  readonly key: string;
  readonly parentKey: string | null;
  readonly ordinal: number;
  readonly spec: RunDocument;
}

async function read(reader: Reader, projectId: string, either: readonly object[]): Promise<Row[]> {
  const rows = await reader.run.findMany({
    where: { OR: either.map((where) => ({ projectId, ...where })) },
    select: { id: true, key: true, parentKey: true, ordinal: true, spec: true },
  });
  return rows.map((row) => ({ ...row, spec: row.spec as unknown as RunDocument }));
}

function parentsOf(rows: readonly Row[], found: ReadonlyMap<string, unknown>): string[] {
  return rows.flatMap(({ parentKey }) => (parentKey === null || found.has(parentKey) ? [] : [parentKey]));
}
