/** A moment, ISO 8601 with its offset. Compared as moments, never as text: "12:00Z" and "07:00-05:00" are the same one. */
export type Instant = string;
/** A calendar day, "2026-05-12". */
export type Day = string;

const MS_PER_DAY = 86_400_000;

/** Milliseconds from `from` to `to`; negative when `to` is earlier. Throws on text that is no moment: schemas keep it out. */
export function millisecondsBetween(from: Instant, to: Instant): number {
  return moment(to) - moment(from);
}

export function isAfter(later: Instant, earlier: Instant): boolean {
  return millisecondsBetween(earlier, later) > 0;
}

/** The later of two moments, where either may be missing. */
export function latest(a: Instant | null, b: Instant | null): Instant | null {
  if (a === null || b === null) return a ?? b;
  return isAfter(b, a) ? b : a;
}

/**
 * The calendar day of a moment where the work stands, because a calibration is due on a day of the site and not of UTC.
 * Without a time zone the day is that of UTC. `siteDay('2026-05-12T03:00:00Z', 'America/Chicago') = '2026-05-11'`.
 */
export function siteDay(at: Instant, timeZone: string | null): Day {
  const parts = dayFormat(timeZone ?? 'UTC').formatToParts(moment(at));
  const part = (type: string) => parts.find((candidate) => candidate.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}`;
}

/** Made once a zone: making one takes longer than a thousand uses of it. */
const dayFormats = new Map<string, Intl.DateTimeFormat>();

function dayFormat(timeZone: string): Intl.DateTimeFormat {
  const known = dayFormats.get(timeZone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  dayFormats.set(timeZone, made);
  return made;
}

/** Whole days from `from` to `to`; negative when `to` is earlier. `daysBetween('2026-05-09', '2026-05-12') = 3`. */
export function daysBetween(from: Day, to: Day): number {
  return Math.round(millisecondsBetween(`${from}T00:00:00Z`, `${to}T00:00:00Z`) / MS_PER_DAY);
}

function moment(at: Instant): number {
  const ms = Date.parse(at);
  if (Number.isNaN(ms)) throw new Error(`not a moment: ${at}`);
  return ms;
}
