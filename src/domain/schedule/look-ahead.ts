import type { CrewSchedule, TimedPlan } from './plan-crews.ts';

export interface LookAheadDay {
  readonly date: string;
  /** For each crew the name of the level that it is on; null: it is on none. */
  readonly levels: readonly (string | null)[];
}

const DAYS = 21;
const DAY_MS = 86_400_000;

/** The working days of the three weeks from today, or from the first day of work where that is later: who is where. */
export function lookAhead(
  schedule: CrewSchedule,
  plan: TimedPlan,
  today: string,
): { readonly from: string; readonly days: readonly LookAheadDay[] } {
  const first = schedule.dates[0] ?? today;
  const from = today > first ? today : first;
  const to = new Date(Date.parse(from) + DAYS * DAY_MS).toISOString().slice(0, 10);
  const days = schedule.dates.flatMap((date, day) =>
    date >= from && date < to ? [{ date, levels: levelsOn(schedule, plan, day) }] : [],
  );
  return { from, days };
}

function levelsOn({ levels }: CrewSchedule, plan: TimedPlan, day: number): readonly (string | null)[] {
  return plan.crews.map(({ stays }) => {
    const level = stays.findIndex(({ start, finish }) => start <= day && day < finish);
    return levels[level]?.name ?? null;
  });
}
