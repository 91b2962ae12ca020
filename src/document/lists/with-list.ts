import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import type { TapDocument } from '../schema/tap.ts';
import type { RunTap } from './preview.ts';

/** The job with the runs of a list after its own. */
export function withRuns(job: JobDocument, runs: readonly RunDocument[]): JobDocument {
  return { ...job, runs: [...job.runs, ...runs] };
}

/** The job with the taps of a list after those that each run has. */
export function withTaps(job: JobDocument, taps: readonly RunTap[]): JobDocument {
  const added = new Map<string, TapDocument[]>();
  for (const { run, tap } of taps) added.set(run, [...(added.get(run) ?? []), tap]);
  const runs = job.runs.map((run) => {
    const more = added.get(run.id);
    return more ? { ...run, taps: [...(run.taps ?? []), ...more] } : run;
  });
  return { ...job, runs };
}
