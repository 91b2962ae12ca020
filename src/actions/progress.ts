import type { Reader } from '../store/database.ts';
import { designOf, type JobDesign } from './job-design.ts';
import { keptReadings } from './kept-readings.ts';
import { drawnAnew } from './progress/drawn-anew.ts';
import { readStandings } from './progress/read-standings.ts';
import type { RunStanding } from './progress/standing.ts';
import { boundariesIn, type RunRow, readRunRows } from './run-states.ts';

export type { RunStanding, Tally } from './progress/standing.ts';

export interface JobProgress {
  readonly design: JobDesign;
  /** In document order. */
  readonly runs: readonly RunStanding[];
}

/** A reading that was made, with what the next one needs to read only what is new. */
interface Reading extends JobProgress {
  readonly rows: readonly RunRow[];
  /** Number of the last entry of the audit chain that it knows; records carry the number of theirs. */
  readonly seq: number;
}

/** More runs than this are not picked out one by one. */
const MOST_PICKED = 400;

/** Readings by job and by the head of its audit chain: whatever changes a job appends to the chain. */
const keep = keptReadings<Reading>();

/** How far every run of a job is. The caller has asked who is reading. */
export async function progressOf(reader: Reader, projectId: string): Promise<JobProgress> {
  const head = await reader.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { seq: true, hash: true },
  });
  const key = `${projectId} ${head?.seq ?? 0} ${head?.hash ?? ''}`;
  return keep(key, projectId, (before) => readAgain(reader, projectId, head?.seq ?? 0, before));
}

/** Only runs with new records or another design can have moved, and those joined to them. */
async function readAgain(
  reader: Reader,
  projectId: string,
  seq: number,
  last: Promise<Reading> | undefined,
): Promise<Reading> {
  const [design, before] = await Promise.all([designOf(reader, projectId), last?.catch(() => undefined)]);
  const rows = before?.design === design ? before.rows : await readRunRows(reader, projectId);
  const now = { design, rows };
  const touched = before === undefined ? null : await touchedSince(reader, projectId, before, now);
  if (before === undefined || touched === null || touched.length > MOST_PICKED)
    return { ...now, seq, runs: await readStandings(reader, projectId, design, rows, 'all') };
  const own = rows.filter((row) => touched.includes(row.id));
  const moved = await readStandings(reader, projectId, design, own, touched);
  const byId = new Map(moved.map((run) => [run.id, run]));
  return { ...now, seq: Math.max(seq, before.seq), runs: before.runs.map((run) => byId.get(run.id) ?? run) };
}

/** Ids of the runs that have moved since a reading, each with its whole boundary; null where any run may have. */
async function touchedSince(
  reader: Reader,
  projectId: string,
  before: Reading,
  now: Pick<Reading, 'design' | 'rows'>,
): Promise<string[] | null> {
  const drawn = before.design === now.design ? [] : drawnAnew(before, now);
  if (drawn === null) return null;
  const found = await reader.inspection.findMany({
    where: { projectId, seq: { gt: before.seq } },
    distinct: ['runId'],
    select: { runId: true },
  });
  const moved = [...new Set([...drawn, ...found.flatMap(({ runId }) => runId ?? [])])];
  if (moved.length === 0) return [];
  const ids = new Map(now.rows.map((row) => [row.key, row.id]));
  const keys = new Map(now.rows.map((row) => [row.id, row.key]));
  // A branch that hangs elsewhere now has left one boundary and come into another.
  const boundaries = [boundariesIn(before.rows), boundariesIn(now.rows)];
  const touched = moved.flatMap((id) => boundaries.flatMap((of) => of.get(keys.get(id) ?? '') ?? []));
  return [...new Set(touched.flatMap((key) => ids.get(key) ?? []))];
}
