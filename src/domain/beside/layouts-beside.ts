import { contextFor } from '../layout/context-for.ts';
import { isJointLabourAlike } from '../layout/joint-labour-cost.ts';
import { layoutRun } from '../layout/layout-run.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Job } from '../model.ts';

/** What was changed in a job, by name: only what a layout can feel. */
export interface Touched {
  readonly runs: ReadonlySet<string>;
  readonly types: ReadonlySet<string>;
}

/**
 * The layouts of a job that was changed, beside those of the job it was: a run is laid out anew where it, its type, a run
 * that it is teed to or one that is teed to it was changed, and every run where a joint costs other labour than before.
 * The rest keep the layouts they have. Runs stand in the order of the job.
 */
export function layoutsBeside(
  before: { readonly job: Job; readonly layouts: readonly RunLayout[] },
  job: Job,
  touched: Touched,
): readonly RunLayout[] {
  const known = new Map(before.layouts.map((layout) => [layout.run, layout]));
  const isDearer = !isJointLabourAlike(job.labourBook, before.job.labourBook);
  const changed = joined(job, touched);
  return job.runs.map((run) => {
    const old = known.get(run.id);
    if (old !== undefined && !isDearer && !changed.has(run.id)) return old;
    return layoutRun(run, contextFor(job, run));
  });
}

/** The runs that were changed, and all that are teed to them at either end, however far. */
function joined(job: Job, { runs, types }: Touched): ReadonlySet<string> {
  const found = new Set(job.runs.filter((run) => runs.has(run.id) || types.has(run.type)).map((run) => run.id));
  for (let grew = found.size > 0; grew; ) {
    grew = false;
    for (const { id, feed } of job.runs) {
      const parent = feed.kind === 'tee' ? feed.fromRun : null;
      if (parent === null || found.has(id) === found.has(parent)) continue;
      found.add(id).add(parent);
      grew = true;
    }
  }
  return found;
}
