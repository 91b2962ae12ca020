import type { FlowPlan } from './flow-line.ts';

export interface WeekLoad {
  /** The Monday that the week begins with, ISO date. */
  readonly from: string;
  /** Hours of work by the labour book. */
  readonly labourHours: number;
  /** Hours that the crews at work are paid for: heads × hours a day, the rest of a crew's last day on a level included. */
  readonly paidHours: number;
  readonly peakHeads: number;
  /** Most lifts in use on one day, of the crews that say how many they take; null where none says. */
  readonly peakLifts: number | null;
}

/** A crew of the plan, in the plan's order. */
export interface CrewLoad {
  readonly heads: number;
  /** Lifts that it works from; absent: nobody has said. */
  readonly lifts?: number | undefined;
  /** Its labour hours on each level. */
  readonly hours: readonly number[];
}

const DAY_MS = 86_400_000;

/**
 * Hours, greatest heads and lifts in each calendar week of a plan (Monday to Sunday, ISO 8601); `dates` are those of its
 * working days. A crew that stands between floors is not counted: its idle days are shown apart. Labour hours lie evenly over
 * a crew's days on a level.
 *
 * Example: a plan of Thursday the 24th, Monday the 28th and Tuesday the 29th has weeks of one and two days.
 */
export function weekLoad(
  plan: FlowPlan,
  crews: readonly CrewLoad[],
  { hoursPerDay, dates }: { readonly hoursPerDay: number; readonly dates: readonly string[] },
): readonly WeekLoad[] {
  const weeks = new Map<string, WeekLoad>();
  for (let day = 0; day < Math.ceil(plan.finish); day++) {
    const date = dates[day];
    // A plan longer than a hundred years has no dates any more.
    if (date === undefined) break;
    const from = mondayOf(date);
    const on = loadOn(plan, crews, day);
    const sum = weeks.get(from);
    weeks.set(from, {
      from,
      labourHours: (sum?.labourHours ?? 0) + on.labourHours,
      paidHours: (sum?.paidHours ?? 0) + on.heads * hoursPerDay,
      peakHeads: Math.max(sum?.peakHeads ?? 0, on.heads),
      peakLifts: crews.some(({ lifts }) => lifts !== undefined) ? Math.max(sum?.peakLifts ?? 0, on.lifts) : null,
    });
  }
  return [...weeks.values()];
}

function loadOn(plan: FlowPlan, crews: readonly CrewLoad[], day: number) {
  const load = { heads: 0, lifts: 0, labourHours: 0 };
  plan.crews.forEach(({ stays }, index) => {
    const level = stays.findIndex(({ start, finish }) => start <= day && day < finish);
    const crew = crews[index];
    const stay = stays[level];
    if (crew === undefined || stay === undefined) return;
    load.heads += crew.heads;
    load.lifts += crew.lifts ?? 0;
    load.labourHours += (crew.hours[level] ?? 0) / (stay.finish - stay.start);
  });
  return load;
}

function mondayOf(date: string): string {
  const at = Date.parse(`${date}T00:00:00Z`);
  const weekday = new Date(at).getUTCDay() || 7;
  return new Date(at - (weekday - 1) * DAY_MS).toISOString().slice(0, 10);
}
