/** Which days are worked: weekdays 1 (Monday) to 7 (Sunday) as in ISO 8601, less holidays (ISO dates). */
export interface WorkingCalendar {
  readonly weekdays: readonly number[];
  readonly holidays: readonly string[];
}

const DAY_MS = 86_400_000;

/** Further than anybody plans: a calendar that has no working day in ten years is a mistake. */
const FARTHEST = 3_660;

/**
 * The date (ISO 8601) of a working day, counted from 0 at the first working day on or after `from`.
 * Throws a RangeError where ten years hold fewer working days than asked for.
 *
 * Example: Monday to Friday, from Friday 2026-12-24 with the 25th a holiday: day 0 is the 24th, day 1 Monday the 28th.
 */
export function workingDate(from: string, day: number, calendar: WorkingCalendar): string {
  const dates = workingDates(from, day + 1, calendar);
  return dates[day]!;
}

/** The first `count` working days on or after `from`. */
export function workingDates(from: string, count: number, { weekdays, holidays }: WorkingCalendar): readonly string[] {
  const closed = new Set(holidays);
  const first = Date.parse(`${from}T00:00:00Z`);
  if (Number.isNaN(first)) throw new RangeError(`${from} is no date`);
  const dates: string[] = [];
  for (let i = 0; dates.length < count; i++) {
    if (i > FARTHEST) throw new RangeError(`fewer than ${count} working days in ten years from ${from}`);
    const date = new Date(first + i * DAY_MS);
    const text = date.toISOString().slice(0, 10);
    if (weekdays.includes(date.getUTCDay() || 7) && !closed.has(text)) dates.push(text);
  }
  return dates;
}
