import type { FlowPlan } from './flow-line.ts';

export interface WeekLoad {
  /** 0 for the first week of the plan. */
  readonly week: number;
  readonly hours: number;
  readonly peakHeads: number;
}

/**
 * Paid hours and greatest heads in each week of a plan, from the heads of each crew (in the plan's order). A crew that
 * stands between floors is not counted: its idle days are shown apart. Weeks are of `daysAWeek` working days.
 */
export function weekLoad(
  plan: FlowPlan,
  heads: readonly number[],
  { hoursPerDay, daysAWeek }: { readonly hoursPerDay: number; readonly daysAWeek: number },
): readonly WeekLoad[] {
  const headsOn = Array.from({ length: Math.ceil(plan.finish) }, (_, day) => headsAt(plan, heads, day));
  const weeks = Math.ceil(headsOn.length / daysAWeek);
  return Array.from({ length: weeks }, (_, week) => {
    const days = headsOn.slice(week * daysAWeek, (week + 1) * daysAWeek);
    return { week, hours: days.reduce((sum, n) => sum + n * hoursPerDay, 0), peakHeads: Math.max(...days) };
  });
}

function headsAt(plan: FlowPlan, heads: readonly number[], day: number): number {
  return plan.crews.reduce((sum, { stays }, crew) => {
    const atWork = stays.some(({ start, finish }) => start <= day && day < finish);
    return sum + (atWork ? (heads[crew] ?? 0) : 0);
  }, 0);
}
