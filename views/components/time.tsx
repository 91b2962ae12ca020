import type { JSX } from 'preact';

export interface TimeProps {
  readonly at: Date;
  /** IANA name of the job's zone; UTC without one. */
  readonly zone?: string | null;
  readonly show?: 'date' | 'date-and-time' | 'time';
}

/** A moment in the zone of the job, the zone always beside the hour: `12 May 2026, 15:40 CDT`. */
export function Time({ at, zone, show = 'date-and-time' }: TimeProps): JSX.Element {
  return <time dateTime={at.toISOString()}>{formatTime(at, zone ?? 'UTC', show)}</time>;
}

/** The same words where no element can stand, as in a drawing or an option. */
export function formatTime(at: Date, zone: string, show: NonNullable<TimeProps['show']> = 'date-and-time'): string {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    year: 'numeric',
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  }).formatToParts(at);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((candidate) => candidate.type === type)?.value ?? '';
  const date = `${part('day')} ${part('month')} ${part('year')}`;
  const time = `${part('hour')}:${part('minute')} ${part('timeZoneName')}`;
  return show === 'date' ? date : show === 'time' ? time : `${date}, ${time}`;
}
