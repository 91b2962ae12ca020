import type { JobDocument } from '../document/job-document.ts';
import { toModel } from '../document/to-model.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Job } from '../domain/model.ts';
import type { Reader } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';

/** A design as it stands, with the layouts that are stored beside it, in document order. */
export interface JobDesign {
  readonly designVersion: number;
  readonly document: JobDocument;
  readonly job: Job;
  readonly layouts: readonly RunLayout[];
}

const KEPT = 4;
/** A design changes with its version alone, so the last few are kept by each server process. */
const kept = new Map<string, Promise<JobDesign>>();

/** The job's design; the caller has asked who is reading. */
export async function designOf(reader: Reader, projectId: string): Promise<JobDesign> {
  const { designVersion } = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { designVersion: true },
  });
  const key = `${projectId}@${designVersion}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const reading = read(reader, projectId, designVersion);
  kept.set(key, reading);
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
  reading.catch(() => kept.delete(key));
  return reading;
}

async function read(reader: Reader, projectId: string, designVersion: number): Promise<JobDesign> {
  const [document, rows] = await Promise.all([
    readDesign(reader, projectId),
    reader.run.findMany({
      where: { projectId },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      select: { layout: true },
    }),
  ]);
  return {
    designVersion,
    document,
    job: toModel(document),
    layouts: rows.map((row) => row.layout as unknown as RunLayout),
  };
}
