import type { LineActivity } from '../labour/result.ts';
import type { CrewPlan, CrewSchedule } from '../schedule/plan-crews.ts';
import { workingDates } from '../schedule/working-calendar.ts';
import type { OrderItem } from './ordering.ts';

/** Why a thing has no date; never a date that nobody has planned. */
export type NoDate = 'no-plan' | 'no-hours' | 'no-crew' | 'by-hand';

export type Need =
  | { readonly date: string; readonly why: null; readonly crew: string }
  | { readonly date: null; readonly why: NoDate };

/** The work that first takes a thing in hand. */
const WORK: Readonly<Record<OrderItem, readonly LineActivity[]>> = {
  section: ['handle-section', 'section'],
  elbow: ['handle-section', 'elbow'],
  tee: ['handle-section', 'tee'],
  clamp: ['joint'],
  'contact-set': ['joint'],
  bolt: ['joint'],
  'end-feed': ['end-feed'],
  'end-cap': ['end-cap'],
  'slot-closure': ['slot-closure'],
  support: ['support'],
  rod: ['support'],
  'rod-stock': ['support'],
  anchor: ['support'],
  nut: ['support'],
  washer: ['support'],
  brace: ['support'],
  'fire-seal': ['fire-seal'],
  tap: ['handle-tap', 'tap'],
  drop: ['drop'],
  label: ['label'],
  extra: [],
};

export interface Manning {
  readonly plan: CrewPlan;
  /** null: no hours are worked, so no crew has days. */
  readonly schedule: CrewSchedule | null;
}

/**
 * The day on which a thing must be on a level: the morning on which the first crew of the plan that works with it starts
 * there. What an estimator added by hand has no work in the plan, and so no date.
 */
export function needDate(
  manning: Manning | null,
  which: 'continuous' | 'earliest',
  level: string,
  item: OrderItem,
): Need {
  if (item === 'extra') return { date: null, why: 'by-hand' };
  if (manning === null) return { date: null, why: 'no-plan' };
  const { plan, schedule } = manning;
  if (schedule === null) return { date: null, why: 'no-hours' };
  const place = schedule.levels.findIndex(({ id }) => id === level);
  const stays = plan.crews.flatMap(({ name, activities }, crew) => {
    const stay = schedule[which].crews[crew]?.stays[place];
    return stay !== undefined && activities.some((activity) => WORK[item].includes(activity))
      ? [{ name, start: stay.start }]
      : [];
  });
  const first = stays.reduce<{ name: string; start: number } | null>(
    (best, stay) => (best === null || stay.start < best.start ? stay : best),
    null,
  );
  if (first === null) return { date: null, why: 'no-crew' };
  const date = schedule.dates[first.start] ?? workingDates(plan.start, first.start + 1, plan.calendar).at(-1);
  return date === undefined ? { date: null, why: 'no-plan' } : { date, why: null, crew: first.name };
}

const DAY_MS = 86_400_000;

/** So many calendar days before a date. `daysBefore('2026-03-02', 3) = '2026-02-27'`. */
export function daysBefore(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) - days * DAY_MS).toISOString().slice(0, 10);
}
