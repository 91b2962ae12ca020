import type { Finding } from '../finding.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Run, UnitSystem, UnpricedJob } from '../model.ts';
import { formatLength } from '../units/format-length.ts';
import { planRods, type RodPlan } from './plan-rods.ts';

/**
 * What the takeoff cannot count as it stands: rods longer than their stock, rods of unknown length, and a cutting plan
 * that the search could not prove to be the least.
 */
export function judgeTakeoff(job: UnpricedJob, layouts: readonly RunLayout[]): readonly Finding[] {
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  const byRun = job.runs.flatMap((run) => {
    const layout = layoutOf.get(run.id);
    return layout?.ok && layout.supports.length > 0 ? judgeRods(run, layout.supports.length, job.project.units) : [];
  });
  const plans = planRods(job, layouts).filter(({ plan }) => !plan.proven);
  return [...byRun, ...plans.map(judgePlan)];
}

function judgePlan({ rod, plan }: RodPlan): Finding {
  const message = `The cutting plan buys ${plan.sticks} lengths of ${rod ?? 'hanger'} rod; no plan needs fewer than ${plan.least}, and the search stopped before it could say whether fewer than ${plan.sticks} do: round rod lengths to fewer sizes to have it settled.`;
  return finding(null, 'rod.plan-open', 'note', message);
}

function judgeRods(run: Run, supports: number, units: UnitSystem): Finding[] {
  if (run.drop === null) {
    const message = `The rod length of run ${run.id} is not given, so rod for its ${supports} hangers is not in the cutting plan: give the drop.`;
    return [finding(run.id, 'rod.unknown', 'note', message)];
  }
  if (run.drop <= run.rodStock) return [];
  const message = `The ${supports} rods of run ${run.id} are ${formatLength(run.drop, units)} and the stock is ${formatLength(run.rodStock, units)}, so they are not in the cutting plan: buy longer rod, or couple rods where the hanger's maker allows it.`;
  return [finding(run.id, 'rod.too-long', 'warning', message)];
}

function finding(run: string | null, rule: string, severity: Finding['severity'], message: string): Finding {
  return { rule, severity, run, at: null, message, source: 'takeoff of this job' };
}
