import type { Finding } from './finding.ts';
import { jobChecks } from './job-checks.ts';
import { runLabourLines } from './labour/labour-lines.ts';
import type { LabourLine } from './labour/result.ts';
import { originOf } from './layout/context-for.ts';
import type { RunLayout } from './layout/result.ts';
import type { Job, Run } from './model.ts';
import type { TakeoffLine } from './takeoff/result.ts';
import { takeOff } from './takeoff/take-off.ts';

/** What is computed of one run: its own part of `Figures`. */
export interface RunFigures {
  readonly hours: readonly LabourLine[];
  readonly checks: readonly Finding[];
}

/**
 * The hours and the findings of one run, the same as `figures` gives for it among all others, without working out the others.
 * `job` need hold no other run. Learning hangs on all of them, so `repeat` tells which repeat this one is in the order of work
 * (`repeatsOf`); null for a run without a sound layout.
 */
export function runFigures(job: Job, run: Run, layout: RunLayout, repeat: number | null): RunFigures {
  const alone: Job = { ...job, runs: [run], extras: [] };
  const takeoff = takeOff(alone, [layout]);
  return {
    hours: repeat === null || !layout.ok ? [] : hoursOf(job, run, layout, { takeoff, repeat }),
    checks: jobChecks(alone, [layout], takeoff).filter((finding) => finding.run === run.id),
  };
}

interface Counted {
  readonly takeoff: readonly TakeoffLine[];
  readonly repeat: number;
}

function hoursOf(job: Job, run: Run, layout: RunLayout, { takeoff, repeat }: Counted): readonly LabourLine[] {
  const level = job.levels.find(({ id }) => id === run.level);
  if (level === undefined) throw new Error(`run ${run.id} hangs on level ${run.level}, which the job does not hold`);
  const own = takeoff.filter((line) => line.run === run.id);
  const { ratedCurrentA } = originOf(job, run).type;
  return job.labourBook === null
    ? []
    : runLabourLines({ run, level, repeat, ratedCurrentA }, layout, own, job.labourBook);
}
