/** Which days are worked: weekdays 1 (Monday) to 7 (Sunday) as in ISO 8601, less holidays (ISO dates). */
export interface WorkingCalendar {
  readonly weekdays: readonly number[];
  readonly holidays: readonly string[];
}

const DAY_MS = 86_400_000;

/** A hundred years: further than anybody plans. */
const FARTHEST = 36_525;

/**
 * The date (ISO 8601) of a working day, counted from 0 at the first working day on or after `from`.
 * Throws a RangeError where a hundred years hold fewer working days than asked for.
 *
 * Example: Monday to Friday, from Friday 2026-12-24 with the 25th a holiday: day 0 is the 24th, day 1 Monday the 28th.
 */
export function workingDate(from: string, day: number, calendar: WorkingCalendar): string {
  const dates = workingDates(from, day + 1, calendar);
  const date = dates[day];
  if (date === undefined) throw new RangeError(`fewer than ${day + 1} working days in a hundred years from ${from}`);
  return date;
}

/** The first `count` working days on or after `from`; fewer where a hundred years hold no more. */
export function workingDates(from: string, count: number, calendar: WorkingCalendar): readonly string[] {
  const dates: string[] = [];
  for (const date of days(from)) {
    if (dates.length >= count) return dates;
    if (isWorked(date, calendar)) dates.push(date);
  }
  return dates;
}

/** How many working days lie from `from` up to but not on `date`: the number of the first one that is not before it. */
export function workingDaysBefore(from: string, date: string, calendar: WorkingCalendar): number {
  let count = 0;
  for (const day of days(from)) {
    if (day >= date) return count;
    if (isWorked(day, calendar)) count++;
  }
  return count;
}

/** Calendar days one after the other, as ISO dates. In UTC, where no day has 23 hours. */
function* days(from: string): Generator<string> {
  const first = Date.parse(`${from}T00:00:00Z`);
  if (Number.isNaN(first)) throw new RangeError(`${from} is no date`);
  for (let i = 0; i <= FARTHEST; i++) yield new Date(first + i * DAY_MS).toISOString().slice(0, 10);
}

function isWorked(date: string, { weekdays, holidays }: WorkingCalendar): boolean {
  return weekdays.includes(new Date(`${date}T00:00:00Z`).getUTCDay() || 7) && !holidays.includes(date);
}
