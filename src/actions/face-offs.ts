import type { BuswayTypeDocument, JobDocument, RunDocument } from '../document/job-document.ts';
import { toModel } from '../document/to-model.ts';
import { judgeFaceOff } from '../domain/face-off/judge-face-off.ts';
import type { Finding } from '../domain/finding.ts';
import { layoutJob } from '../domain/layout/layout-job.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import { inChunks } from '../store/in-chunks.ts';
import type { TypedRun } from '../store/runs-beside.ts';
import type { JobDesign } from './job-design.ts';

/** A design's face-offs change with it alone, and are kept as long as it is. */
const kept = new WeakMap<JobDesign, ReadonlyMap<string, readonly Finding[]>>();

/** What every run's tap-offs have too little room from, by run. */
export function faceOffsOf(design: JobDesign): ReadonlyMap<string, readonly Finding[]> {
  const known = kept.get(design);
  if (known !== undefined) return known;
  const found = byRun(judgeFaceOff(design.job, design.layouts));
  kept.set(design, found);
  return found;
}

/**
 * The same for these runs alone, from the runs of their levels, which is all that can stand in their way. Nothing but the
 * types is read of a job in which no sheet says how far a box stands out.
 */
export async function faceOffsAround(
  reader: Reader,
  projectId: string,
  keys: readonly string[],
): Promise<ReadonlyMap<string, readonly Finding[]>> {
  const types = await reader.buswayType.findMany({ where: { projectId }, select: { spec: true } });
  if (nobodyStatesBoxes(types.map(({ spec }) => spec as unknown as BuswayTypeDocument))) return new Map();
  const rows = await rowsAround(reader, projectId, keys);
  // A branch's place follows from its parents, wherever these hang.
  const scope = await connectedRuns(reader, projectId, [...rows.keys()], 'tees');
  const job = toModel(await readDesign(reader, projectId, scope));
  return byRun(judgeFaceOff(job, [...rows.values()], new Set(keys)));
}

/** The same for a run as it is typed: `document` holds it and what it depends on, `layout` is its own. */
export async function faceOffsAsTyped(
  reader: Reader,
  projectId: string,
  { rowId, document: typed }: TypedRun,
  document: JobDocument,
  layout: RunLayout,
): Promise<readonly Finding[]> {
  if (nobodyStatesBoxes(document.buswayTypes)) return [];
  const rows = await reader.run.findMany({
    where: { projectId, level: { key: typed.level } },
    select: { id: true, spec: true, layout: true },
  });
  const others = rows.filter(({ id }) => id !== rowId);
  const known = new Set(document.runs.map(({ id }) => id));
  const specs = others.map(({ spec }) => spec as unknown as RunDocument).filter(({ id }) => !known.has(id));
  const job = toModel({ ...document, runs: [...document.runs, ...specs] });
  const layouts = [layout, ...others.map((row) => row.layout as unknown as RunLayout)];
  return judgeFaceOff(job, layouts, new Set([typed.id]));
}

/** The same for runs that would be made: `after` holds them, `around` all that hangs on their levels. Nothing is read. */
export function faceOffsOfMade(after: JobDocument, around: JobDocument, made: readonly string[]): readonly Finding[] {
  if (nobodyStatesBoxes(after.buswayTypes)) return [];
  const known = new Set(after.runs.map(({ id }) => id));
  const others = around.runs.filter(({ id }) => !known.has(id));
  const job = toModel({ ...after, runs: [...after.runs, ...others] });
  return judgeFaceOff(job, layoutJob(job), new Set(made));
}

/** In a job of such types no room is looked for. */
export function nobodyStatesBoxes(types: readonly BuswayTypeDocument[]): boolean {
  return types.every((type) => type.tap?.boxDepthMm === undefined);
}

/** Layouts of all runs on the levels of these, by label. */
async function rowsAround(
  reader: Reader,
  projectId: string,
  keys: readonly string[],
): Promise<ReadonlyMap<string, RunLayout>> {
  const own = await inChunks(keys, (chunk) =>
    reader.run.findMany({ where: { projectId, key: { in: chunk } }, select: { levelId: true } }),
  );
  const levels = [...new Set(own.map(({ levelId }) => levelId))];
  const rows = await inChunks(levels, (chunk) =>
    reader.run.findMany({ where: { levelId: { in: chunk } }, select: { key: true, layout: true } }),
  );
  return new Map(rows.map(({ key, layout }) => [key, layout as unknown as RunLayout]));
}

function byRun(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const runs = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.run === null) continue;
    const here = runs.get(finding.run);
    if (here === undefined) runs.set(finding.run, [finding]);
    else here.push(finding);
  }
  return runs;
}
