import { setImmediate } from 'node:timers/promises';
import type { BuswayTypeDocument } from '../../document/job-document.ts';
import type { RunEvidence, TypeEvidence } from '../../domain/closeout/evidence.ts';
import { lastWorkInBoundary, VOIDS_TESTS } from '../../domain/quality/stale.ts';
import { readEvidencePage } from '../../store/closeout-evidence.ts';
import { type RunPlace, runsInOrder } from '../../store/closeout-runs.ts';
import type { Reader } from '../../store/database.ts';
import { readLastWork } from '../../store/run-counts.ts';
import { boundariesIn } from '../run-states.ts';
import { evidenceOf } from './evidence-of.ts';

export interface JobEvidence {
  readonly runs: readonly RunEvidence[];
  readonly types: readonly TypeEvidence[];
}

const PER_PAGE = 100;

/** What the record holds of every run, in the order of the closeout: states as they stand, and the records of each run as a whole. */
export async function readEvidence(reader: Reader, projectId: string): Promise<JobEvidence> {
  const places = await runsInOrder(reader, projectId);
  const [types, lastWork] = await Promise.all([
    reader.buswayType.findMany({
      where: { projectId, runs: { some: {} } },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      select: { key: true, spec: true },
    }),
    lastWorkByKey(reader, projectId, places),
  ]);
  const runs: RunEvidence[] = [];
  for (let first = 0; first < places.length; first += PER_PAGE) {
    const page = await readEvidencePage(reader, places.slice(first, first + PER_PAGE));
    for (const run of page.runs) runs.push(evidenceOf(run, page, lastWork.get(run.key) ?? null));
    await setImmediate(); // thousands of runs take seconds to read, and others are served in between
  }
  return { runs, types: types.map(({ key, spec }) => ({ type: key, sheetNamed: namesSheet(spec) })) };
}

function namesSheet(spec: unknown): boolean {
  return (spec as BuswayTypeDocument).sheet !== undefined;
}

/** The last work on anything that a run is connected to, by the run's label. */
async function lastWorkByKey(
  reader: Reader,
  projectId: string,
  places: readonly RunPlace[],
): Promise<ReadonlyMap<string, string | null>> {
  const keys = new Map(places.map((place) => [place.id, place.key]));
  const rows = await readLastWork(reader, projectId, 'all', VOIDS_TESTS);
  const last = new Map(rows.map(({ runId, at }) => [keys.get(runId) ?? '', at.toISOString()]));
  return lastWorkInBoundary(last, boundariesIn(places));
}
