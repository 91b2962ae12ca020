import { millisecondsBetween } from './instant.ts';
import type { RecordBody, SiteRecord } from './record.ts';

/**
 * The records that count, in the order in which they reached the book (then when done, then as handed in). One that was superseded steps aside, and the one that replaced it stands in its
 * place, so that a corrected step keeps its turn; a withdrawal removes both. Nothing is ever deleted from the book itself.
 *
 * Example: step 3 recorded, step 4 recorded, step 3 corrected gives the correction, then step 4.
 */
export function standingRecords(records: readonly SiteRecord[]): readonly SiteRecord<StandingBody>[] {
  const replacement = new Map(records.flatMap((record) => (record.supersedes ? [[record.supersedes.id, record]] : [])));
  const known = new Set(records.map((record) => record.id));
  return [...records]
    .sort(byArrival)
    .filter((record) => record.supersedes === null || !known.has(record.supersedes.id))
    .map((first) => lastOf(first, replacement))
    .filter(isStanding);
}

export type StandingRecord = SiteRecord<StandingBody>;
export type StandingBody = Exclude<RecordBody, { readonly kind: 'record-withdrawn' }>;

function byArrival(a: SiteRecord, b: SiteRecord): number {
  return millisecondsBetween(b.recordedAt, a.recordedAt) || millisecondsBetween(b.at, a.at);
}

function lastOf(first: SiteRecord, replacement: ReadonlyMap<string, SiteRecord>): SiteRecord {
  let current = first;
  for (let next = replacement.get(current.id); next !== undefined; next = replacement.get(current.id)) current = next;
  return current;
}

function isStanding(record: SiteRecord): record is SiteRecord<StandingBody> {
  return record.body.kind !== 'record-withdrawn';
}
