import type { Job } from '../model.ts';
import { contextFor } from './context-for.ts';
import { layoutRun } from './layout-run.ts';
import type { RunLayout } from './result.ts';

/** Every run of a job laid out, in document order. */
export function layoutJob(job: Job): readonly RunLayout[] {
  return job.runs.map((run) => layoutRun(run, contextFor(job, run)));
}
