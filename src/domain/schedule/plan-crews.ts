import type { LabourLine, LineActivity } from '../labour/result.ts';
import type { Level } from '../model.ts';
import { crewDays } from './crew-days.ts';
import { continuousPlan, earliestPlan, type FlowInput, type FlowPlan } from './flow-line.ts';
import { type WeekLoad, weekLoad } from './week-load.ts';
import { type WorkingCalendar, workingDates, workingDaysBefore } from './working-calendar.ts';

/** How the job is manned: crews in the order in which they follow each other over the levels. */
export interface CrewPlan {
  /** First day of work, ISO 8601. */
  readonly start: string;
  readonly hoursPerDay: number;
  readonly calendar: WorkingCalendar;
  /** Working days between one crew leaving a level and the next one starting there. */
  readonly bufferDays: number;
  readonly crews: readonly {
    readonly name: string;
    readonly heads: number;
    /** Lifts that the crew works from; absent: nobody has said. */
    readonly lifts?: number | undefined;
    readonly activities: readonly LineActivity[];
  }[];
  /** Levels that may not be entered before a date. */
  readonly released: readonly { readonly level: string; readonly date: string }[];
}

export interface CrewSchedule {
  readonly levels: readonly Level[];
  /** Labour hours by crew and level, in the plan's order of crews and the levels' of work. */
  readonly hours: readonly (readonly number[])[];
  readonly days: readonly (readonly number[])[];
  readonly continuous: TimedPlan;
  readonly earliest: TimedPlan;
  /** The date of each working day of the longer plan. */
  readonly dates: readonly string[];
  /** Hours that no crew of the plan works, greatest first: they are in neither plan. */
  readonly unplaced: readonly { readonly activity: LineActivity; readonly hours: number }[];
}

export interface TimedPlan extends FlowPlan {
  readonly weeks: readonly WeekLoad[];
  readonly peakHeads: number;
  /** Most lifts in use on one day; null where no crew says how many it takes. */
  readonly peakLifts: number | null;
}

/**
 * Crews over floors, twice: each without standing, and each as soon as it can. Labour hours come from the labour lines,
 * so the non-productive share is in. Hours of activities that no crew has, and hours without a level, are named.
 *
 * Source: flow line planning, common practice; a day of a crew is heads x hours a day.
 */
export function planCrews(plan: CrewPlan, levels: readonly Level[], lines: readonly LabourLine[]): CrewSchedule {
  const inOrder = [...levels].sort((a, b) => a.order - b.order);
  const sums = hoursByLevel(lines);
  const hours = plan.crews.map(({ activities }) => {
    const own = new Set<string>(activities);
    return inOrder.map(({ id }) => hoursOf(sums.get(id), own));
  });
  const days = hours.map((row, crew) => row.map((h) => crewDays(h, plan.crews[crew]!.heads, plan.hoursPerDay)));
  const input: FlowInput = {
    crews: plan.crews.map(({ name }, crew) => ({ name, days: days[crew]! })),
    buffer: plan.bufferDays,
    released: releasedDays(plan, inOrder),
  };
  const flows = { continuous: continuousPlan(input), earliest: earliestPlan(input) };
  const last = Math.max(1, flows.continuous.finish, flows.earliest.finish);
  const dates = workingDates(plan.start, last, plan.calendar);
  const loads = plan.crews.map(({ heads, lifts }, crew) => ({ heads, lifts, hours: hours[crew]! }));
  const timed = (flow: FlowPlan): TimedPlan => {
    const weeks = weekLoad(flow, loads, { hoursPerDay: plan.hoursPerDay, dates });
    const lifts = weeks.flatMap(({ peakLifts }) => (peakLifts === null ? [] : [peakLifts]));
    return {
      ...flow,
      weeks,
      peakHeads: Math.max(0, ...weeks.map(({ peakHeads }) => peakHeads)),
      peakLifts: lifts.length === 0 ? null : Math.max(...lifts),
    };
  };
  return {
    levels: inOrder,
    hours,
    days,
    continuous: timed(flows.continuous),
    earliest: timed(flows.earliest),
    dates,
    unplaced: unplaced(plan, inOrder, lines),
  };
}

/** Working days from the start until each level is released; 0 where it is already, or nobody has said. */
function releasedDays({ start, calendar, released }: CrewPlan, levels: readonly Level[]): number[] {
  const dateOf = new Map(released.map(({ level, date }) => [level, date]));
  return levels.map(({ id }) => {
    const date = dateOf.get(id);
    return date === undefined ? 0 : workingDaysBefore(start, date, calendar);
  });
}

function unplaced(
  { crews }: CrewPlan,
  levels: readonly Level[],
  lines: readonly LabourLine[],
): CrewSchedule['unplaced'] {
  const placed = new Set<string>(crews.flatMap(({ activities }) => activities));
  const known = new Set(levels.map(({ id }) => id));
  const sums = new Map<LineActivity, number>();
  for (const line of lines) {
    if (placed.has(line.activity) && line.level !== null && known.has(line.level)) continue;
    sums.set(line.activity, (sums.get(line.activity) ?? 0) + line.hours);
  }
  return [...sums]
    .map(([activity, hours]) => ({ activity, hours }))
    .filter(({ hours }) => hours > 0)
    .sort((a, b) => b.hours - a.hours);
}

function hoursByLevel(lines: readonly LabourLine[]): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const levels = new Map<string, Map<string, number>>();
  for (const { level, activity, hours } of lines) {
    if (level === null) continue;
    const sums = levels.get(level) ?? new Map<string, number>();
    levels.set(level, sums);
    sums.set(activity, (sums.get(activity) ?? 0) + hours);
  }
  return levels;
}

function hoursOf(sums: ReadonlyMap<string, number> | undefined, activities: ReadonlySet<string>): number {
  return [...(sums ?? [])].reduce((sum, [activity, hours]) => sum + (activities.has(activity) ? hours : 0), 0);
}
