import { z } from 'zod';
import type { RunDocument } from '../document/job-document.ts';
import { toRun } from '../document/model/to-run.ts';
import { toModel } from '../document/to-model.ts';
import { labourLines } from '../domain/labour/labour-lines.ts';
import { workOf } from '../domain/labour/work-of.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Job, LabourBook, Run, UnitSystem } from '../domain/model.ts';
import { compareRevisions, type Revised } from '../domain/revision/compare-revisions.ts';
import type { RevisionDifference } from '../domain/revision/difference.ts';
import { takeOff } from '../domain/takeoff/take-off.ts';
import type { Reader } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import type { Context, Viewer } from './context.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { readBoundaries } from './run-states.ts';

/** A released revision by its number, or the design as it stands. */
export const revisionNameSchema = z.union([z.coerce.number().int().positive(), z.literal('draft')]);
export type RevisionName = z.infer<typeof revisionNameSchema>;

export interface Compared {
  readonly units: UnitSystem;
  readonly before: { readonly name: RevisionName; readonly run: Run; readonly layout: RunLayout };
  readonly after: { readonly name: RevisionName; readonly run: Run; readonly layout: RunLayout };
  readonly difference: RevisionDifference;
}

/** Two revisions of a run, or a revision and the draft. */
export async function compareRun(
  context: Context,
  viewer: Viewer,
  projectId: string,
  runId: string,
  names: readonly [RevisionName, RevisionName],
): Promise<Compared> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  return compareOf(db, projectId, runId, names);
}

/** The same for a caller that has already asked who is reading. */
export async function compareOf(
  reader: Reader,
  projectId: string,
  runId: string,
  [from, to]: readonly [RevisionName, RevisionName],
): Promise<Compared> {
  const known = await reader.run.findFirst({ where: { projectId, id: runId }, select: { id: true } });
  if (known === null) return refuse({ code: 'not-found', what: 'run' });
  const job = toModel(await readDesign(reader, projectId, []));
  const before = await readRevision(reader, runId, from);
  const after = await readRevision(reader, runId, to);
  const boundary = await readBoundaries(reader, projectId, [runId]);
  return {
    units: job.project.units,
    before: { name: from, ...before },
    after: { name: to, ...after },
    difference: compareRevisions(
      revised(job, before),
      revised(job, after),
      boundary.map(({ key }) => key),
    ),
  };
}

interface Drawn {
  readonly run: Run;
  readonly layout: RunLayout;
}

async function readRevision(reader: Reader, runId: string, name: RevisionName): Promise<Drawn> {
  const row =
    name === 'draft'
      ? await reader.run.findUnique({ where: { id: runId }, select: { spec: true, layout: true } })
      : await reader.runRevision.findUnique({
          where: { runId_number: { runId, number: name } },
          select: { spec: true, layout: true },
        });
  if (row === null) return refuse({ code: 'not-found', what: `revision ${name} of this run` });
  return { run: toRun(row.spec as unknown as RunDocument), layout: row.layout as unknown as RunLayout };
}

/** Hours of the run alone and before learning, which hangs on the order of all runs and says nothing of this change. */
export function revised(job: Job, { run, layout }: Drawn): Revised {
  const book = job.labourBook;
  return { run, layout, hours: book === null ? [] : hoursOf(job, book, run, layout) };
}

function hoursOf(job: Job, book: LabourBook, run: Run, layout: RunLayout): Revised['hours'] {
  // A level or type that has gone since an old revision bears no hours any more.
  if (!job.levels.some((level) => level.id === run.level) || !job.types.some((type) => type.id === run.type)) return [];
  const alone: Job = { ...job, runs: [run], extras: [] };
  const own = { ...layout, run: run.id };
  return labourLines(workOf(alone, [own], takeOff(alone, [own])), { ...book, learning: null }, []);
}
