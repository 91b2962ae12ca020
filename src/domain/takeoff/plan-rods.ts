import type { RunLayout } from '../layout/result.ts';
import type { Run, UnpricedJob } from '../model.ts';
import type { Length } from '../units/length.ts';
import { type CuttingPlan, planCuts } from './cutting-plan.ts';
import { groupBy } from './group-by.ts';

/** What to buy for all hanger rods of one diameter in the job. */
export interface RodPlan {
  readonly rod: string | null;
  readonly plan: CuttingPlan;
}

/**
 * The cutting plans of the job's hanger rods, one per diameter and stock length: one rod a support, as long as the run's
 * `drop`. Rods of unknown length and rods longer than their stock are left out: `judgeRods` names them.
 */
export function planRods(job: UnpricedJob, layouts: readonly RunLayout[]): readonly RodPlan[] {
  return groupBy(wantedRods(job, layouts), ({ run }) => `${run.rod} ${run.rodStock}`).map((group) => ({
    rod: group[0].run.rod,
    plan: planCuts(
      group[0].run.rodStock,
      group.map(({ count, length }) => ({ count, length })),
    ),
  }));
}

function wantedRods(job: UnpricedJob, layouts: readonly RunLayout[]): { run: Run; length: Length; count: number }[] {
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  return job.runs.flatMap((run) => {
    const layout = layoutOf.get(run.id);
    if (!layout?.ok || layout.supports.length === 0) return [];
    if (run.drop === null || run.drop <= 0 || run.drop > run.rodStock) return [];
    return [{ run, length: run.drop, count: layout.supports.length }];
  });
}
