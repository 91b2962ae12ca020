import { type Finding, orderJobFindings } from './finding.ts';
import { judgeLabour } from './labour/judge-labour.ts';
import type { RunLayout } from './layout/result.ts';
import type { Job, UnpricedJob } from './model.ts';
import { judgeCords } from './ordering/cord-lengths.ts';
import { judgeTakeoff } from './takeoff/judge-takeoff.ts';
import type { TakeoffLine } from './takeoff/result.ts';

/**
 * Everything that is found about a job, in the fixed order of findings. What is found about one run hangs on that run and its
 * layout alone, so a job of one run finds the same about it; findings of the whole job name no run.
 */
export function jobChecks(
  job: Job,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
): readonly Finding[] {
  return orderJobFindings(job, [...countChecks(job, layouts), ...judgeLabour(job, layouts, takeoff)]);
}

/** What is found about what is counted, whatever the labour book and the bid say; in no order. */
export function countChecks(job: UnpricedJob, layouts: readonly RunLayout[]): readonly Finding[] {
  return [...layouts.flatMap((layout) => layout.findings), ...judgeTakeoff(job, layouts), ...judgeCords(job, layouts)];
}
