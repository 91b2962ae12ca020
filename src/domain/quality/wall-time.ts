import type { Instant } from './instant.ts';

const WALL = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2}))?$/;

/**
 * A moment as the clock on the wall of the site shows it, to the minute: what a form writes and reads. Without a zone it is UTC.
 * `toWallTime('2026-05-12T20:40:00Z', 'America/Chicago') = '2026-05-12T15:40'`.
 */
export function toWallTime(at: Instant, timeZone: string | null): string {
  return wallText(Date.parse(at), timeZone).slice(0, 16);
}

/**
 * The moment that a time on the wall of the site means; null for text that is no time. An hour that the clock skips in spring
 * means the one after it, an hour that it repeats in autumn the first of the two.
 * `fromWallTime('2026-05-12T15:40', 'America/Chicago') = '2026-05-12T20:40:00.000Z'`.
 */
export function fromWallTime(text: string, timeZone: string | null): Instant | null {
  const [, year, month, day, hour, minute, second = '0'] = WALL.exec(text) ?? [];
  if (year === undefined) return null;
  const asUtc = Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute), Number(second));
  if (!new Date(asUtc).toISOString().startsWith(text.slice(0, 16))) return null;
  const guesses = [asUtc - DAY_MS, asUtc + DAY_MS].map((near) => asUtc - offsetMs(near, timeZone));
  const found = guesses.filter((guess) => guess + offsetMs(guess, timeZone) === asUtc);
  return new Date(found.length > 0 ? Math.min(...found) : Math.max(...guesses)).toISOString();
}

const DAY_MS = 86_400_000;

/** How far the wall is ahead of UTC at this moment. */
function offsetMs(moment: number, timeZone: string | null): number {
  const whole = Math.floor(moment / 1000) * 1000;
  return Date.parse(`${wallText(whole, timeZone)}Z`) - whole;
}

function wallText(moment: number, timeZone: string | null): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone: timeZone ?? 'UTC',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(moment);
  const part = (type: string) => parts.find((candidate) => candidate.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}:${part('second')}`;
}
