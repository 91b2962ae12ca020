import type { Reader } from '../store/database.ts';
import { designOf, type JobDesign } from './job-design.ts';
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

const KEPT = 4;
/** More runs than this are not picked out one by one. */
const MOST_PICKED = 400;

/** Readings by job and by the head of its audit chain: whatever changes a job appends to the chain. */
const kept = new Map<string, { readonly projectId: string; readonly reading: Promise<Reading> }>();

/** How far every run of a job is. The caller has asked who is reading. */
export async function progressOf(reader: Reader, projectId: string): Promise<JobProgress> {
  const head = await reader.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { seq: true, hash: true },
  });
  const key = `${projectId} ${head?.seq ?? 0} ${head?.hash ?? ''}`;
  const known = kept.get(key);
  if (known !== undefined) return known.reading;
  const before = [...kept.values()].reverse().find((entry) => entry.projectId === projectId)?.reading;
  const reading = readAgain(reader, projectId, head?.seq ?? 0, before);
  kept.set(key, { projectId, reading });
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
  reading.catch(() => kept.delete(key));
  return reading;
}

/** While the design stands, only runs with new records can have moved, and those joined to them. */
async function readAgain(
  reader: Reader,
  projectId: string,
  seq: number,
  last: Promise<Reading> | undefined,
): Promise<Reading> {
  const [design, before] = await Promise.all([designOf(reader, projectId), last?.catch(() => undefined)]);
  const touched =
    before?.design.designVersion === design.designVersion ? await touchedSince(reader, projectId, before) : null;
  if (before === undefined || touched === null || touched.length > MOST_PICKED) {
    const rows = await readRunRows(reader, projectId);
    return { design, rows, seq, runs: await readStandings(reader, projectId, design, rows, 'all') };
  }
  const rows = before.rows.filter((row) => touched.includes(row.id));
  const moved = await readStandings(reader, projectId, design, rows, touched);
  const byId = new Map(moved.map((run) => [run.id, run]));
  return { ...before, seq: Math.max(seq, before.seq), runs: before.runs.map((run) => byId.get(run.id) ?? run) };
}

/** Ids of the runs that records were made on since, each with its whole boundary. */
async function touchedSince(reader: Reader, projectId: string, { rows, seq }: Reading): Promise<string[]> {
  const found = await reader.inspection.findMany({
    where: { projectId, seq: { gt: seq } },
    distinct: ['runId'],
    select: { runId: true },
  });
  if (found.length === 0) return [];
  const ids = new Map(rows.map((row) => [row.key, row.id]));
  const keys = new Map(rows.map((row) => [row.id, row.key]));
  const boundaries = boundariesIn(rows);
  const touched = found.flatMap(({ runId }) => boundaries.get(keys.get(runId) ?? '') ?? []);
  return [...new Set(touched.flatMap((key) => ids.get(key) ?? []))];
}
