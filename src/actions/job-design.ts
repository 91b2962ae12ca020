import { isDeepStrictEqual } from 'node:util';
import type { JobDocument } from '../document/job-document.ts';
import { toModel } from '../document/to-model.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Job } from '../domain/model.ts';
import type { Reader } from '../store/database.ts';
import { designDocument, readFrame, readStoredRuns, type StoredRun } from '../store/designs.ts';
import { keptReadings } from './kept-readings.ts';

/**
 * A design as it stands, with the layouts that are stored beside it, in document order. Parts that a change has left as they
 * were are the very objects of the design before it: whoever keeps what hangs on them finds it again by them.
 */
export interface JobDesign {
  readonly designVersion: number;
  readonly document: JobDocument;
  readonly job: Job;
  readonly layouts: readonly RunLayout[];
  readonly stored: readonly StoredRun[];
}

/** A design changes with its version alone. */
const keep = keptReadings<JobDesign>();

/** The job's design; the caller has asked who is reading. */
export async function designOf(reader: Reader, projectId: string): Promise<JobDesign> {
  const designVersion = await versionOf(reader, projectId);
  const key = `${projectId}@${designVersion}`;
  return keep(key, projectId, (before) => readSince(reader, projectId, designVersion, before));
}

async function versionOf(reader: Reader, projectId: string): Promise<number> {
  const { designVersion } = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { designVersion: true },
  });
  return designVersion;
}

/** Reads what has changed since a design that is at hand. */
async function readSince(
  reader: Reader,
  projectId: string,
  designVersion: number,
  last: Promise<JobDesign> | undefined,
): Promise<JobDesign> {
  const before = (await last?.catch(() => undefined)) ?? null;
  const frame = await readFrame(reader, projectId);
  const read = await readStoredRuns(reader, projectId, before?.stored ?? []);
  const stored = before !== null && sameRows(before.stored, read) ? before.stored : read;
  const sameRuns = before !== null && stored === before.stored;
  const document = designDocument(
    before === null ? frame : keepParts(before.document, frame),
    sameRuns ? before.document.runs : stored.map((run) => run.document),
  );
  return {
    designVersion,
    document,
    job: toModel(document, before),
    layouts: sameRuns ? before.layouts : stored.map((run) => run.layout),
    stored,
  };
}

function sameRows(before: readonly StoredRun[], after: readonly StoredRun[]): boolean {
  return before.length === after.length && before.every((row, i) => row === after[i]);
}

/** Parts that say the same as before are those of before. */
function keepParts(before: JobDocument, frame: Omit<JobDocument, 'runs'>): Omit<JobDocument, 'runs'> {
  const old: Record<string, unknown> = { ...before };
  const parts = Object.entries(frame).map(([key, part]) => [key, isDeepStrictEqual(old[key], part) ? old[key] : part]);
  return Object.fromEntries(parts);
}
