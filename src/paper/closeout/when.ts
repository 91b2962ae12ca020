import type { Instant } from '../../domain/quality/instant.ts';

const formats = new Map<string, Intl.DateTimeFormat>();
/** Moments of the zone that was last written in: what was done in one visit stands on a sheet many times. */
const written = { zone: '', moments: new Map<Instant, string>() };
const MOST_KEPT = 2000;

/** A moment as the book prints it, in the job's time zone: `when('2026-05-12T13:00:00Z', 'America/Chicago') = '2026-05-12 08:00'`. */
export function when(at: Instant, timeZone: string | null): string {
  const zone = timeZone ?? 'UTC';
  if (written.zone !== zone || written.moments.size >= MOST_KEPT) {
    written.zone = zone;
    written.moments.clear();
  }
  const known = written.moments.get(at);
  if (known !== undefined) return known;
  const moment = write(at, timeZone);
  written.moments.set(at, moment);
  return moment;
}

function write(at: Instant, timeZone: string | null): string {
  const parts = new Map(
    format(timeZone)
      .formatToParts(Date.parse(at))
      .map((part) => [part.type, part.value]),
  );
  const day = `${parts.get('year')}-${parts.get('month')}-${parts.get('day')}`;
  return `${day} ${parts.get('hour')}:${parts.get('minute')}`;
}

/** The zone that times stand in: the job's, or UTC where it names none that is known. */
export function zoneName(timeZone: string | null): string {
  return format(timeZone).resolvedOptions().timeZone;
}

function format(timeZone: string | null): Intl.DateTimeFormat {
  const zone = timeZone ?? 'UTC';
  const known = formats.get(zone);
  if (known !== undefined) return known;
  const made = make(zone) ?? format(null);
  formats.set(zone, made);
  return made;
}

function make(timeZone: string): Intl.DateTimeFormat | null {
  try {
    return new Intl.DateTimeFormat('en-CA', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
  } catch {
    return null; // a zone that this machine does not know: the book then says UTC
  }
}
