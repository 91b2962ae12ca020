import type { JobDocument } from '../document/job-document.ts';
import { toModel } from '../document/to-model.ts';
import { type Figures, figures } from '../domain/figures.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Job } from '../domain/model.ts';
import type { Reader } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import type { Context, Viewer } from './context.ts';
import { type Reach, reach } from './reach.ts';

export interface JobFigures {
  readonly designVersion: number;
  readonly document: JobDocument;
  readonly job: Job;
  readonly figures: Figures;
}

const KEPT = 4;
/** A design's figures change with its version alone, so the last few are kept by each server process. */
const kept = new Map<string, Promise<JobFigures>>();

/** Takeoff, hours and checks of the design as it stands, from the layouts that are stored with it. Fence the money before it leaves. */
export async function getFigures(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<JobFigures & { readonly reached: Reach }> {
  const reached = await reach(context.database.db, viewer, projectId);
  return { ...(await figuresOf(context.database.db, projectId)), reached };
}

/** The same for a caller that has already asked who is reading. */
export async function figuresOf(reader: Reader, projectId: string): Promise<JobFigures> {
  const { designVersion } = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { designVersion: true },
  });
  const key = `${projectId}@${designVersion}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const computing = compute(reader, projectId, designVersion);
  kept.set(key, computing);
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
  computing.catch(() => kept.delete(key));
  return computing;
}

async function compute(reader: Reader, projectId: string, designVersion: number): Promise<JobFigures> {
  const [document, rows] = await Promise.all([
    readDesign(reader, projectId),
    reader.run.findMany({
      where: { projectId },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      select: { layout: true },
    }),
  ]);
  const job = toModel(document);
  return {
    designVersion,
    document,
    job,
    figures: figures(
      job,
      rows.map((row) => row.layout as unknown as RunLayout),
    ),
  };
}
