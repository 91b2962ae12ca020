import { type Day, daysBetween, type Instant, siteDay } from './instant.ts';
import type { RecordBody, SiteRecord } from './record.ts';
import type { Remark } from './remark.ts';

/**
 * What a calibration says about a use on a day: null when it was in date (the due day itself still is), else a remark. Use
 * past the due day, or with no known due day, is kept as information and credits nothing.
 */
export function calibrationRemark(
  tool: { id: string; due: Day | null },
  at: Instant,
  timeZone: string | null,
): Remark | null {
  if (tool.due === null) return { code: 'tool.calibration-unknown', args: { id: tool.id } };
  const day = siteDay(at, timeZone);
  const daysOver = daysBetween(tool.due, day);
  return daysOver <= 0
    ? null
    : { code: 'tool.calibration-expired', args: { id: tool.id, due: tool.due, day, daysOver } };
}

/**
 * Every standing entry made with a tool or an instrument after the last day on which it was good: what reopens when a
 * calibration turns out to have lapsed, whatever due day the entries themselves claimed.
 */
export function entriesWithToolSince(
  records: readonly SiteRecord[],
  toolId: string,
  lastGood: Day,
  timeZone: string | null,
): readonly SiteRecord[] {
  return records.filter(
    (record) => toolOf(record.body) === toolId && daysBetween(lastGood, siteDay(record.at, timeZone)) > 0,
  );
}

/** The torque tool or the instrument that an entry was made with; null for one made without. */
export function toolOf(body: RecordBody): string | null {
  if (body.kind === 'joint-step') return body.torque?.toolId ?? null;
  return body.kind === 'insulation-test' ? body.instrument.id : null;
}
