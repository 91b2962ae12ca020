import { type Instant, isAfter, latest } from './instant.ts';
import { type NewRecord, type SiteRecord, subjectOf } from './record.ts';
import type { RecordRefusal } from './refusal.ts';
import { standingRecords } from './standing-records.ts';

/** A telephone's clock may run this far ahead of the server's before "done at" counts as the future. */
const CLOCK_SKEW_MS = 5 * 60_000;

/** What stands in the book about the subject when the record arrives. */
export interface Standing {
  readonly now: Instant;
  /** Version of the subject's row. */
  readonly version: number;
  readonly records: readonly SiteRecord[];
}

/**
 * What every record must hold whatever it says: not from the future, not made on an older reading, about its own kind of
 * subject, in time order with what was recorded before, and superseding only what still stands. Null when it holds.
 */
export function guardRecord(record: NewRecord, standing: Standing): RecordRefusal | null {
  return (
    subjectFault(record) ??
    futureFault(record, standing.now) ??
    staleFault(record, standing.version) ??
    placeFault(record, standing.records)
  );
}

function subjectFault({ body, subject }: NewRecord): RecordRefusal | null {
  const own = subjectOf(body.kind);
  return own === null || own === subject ? null : { code: 'record.other-subject', args: { kind: body.kind, subject } };
}

function futureFault({ at }: NewRecord, now: Instant): RecordRefusal | null {
  const limit = new Date(Date.parse(now) + CLOCK_SKEW_MS).toISOString();
  return isAfter(at, limit) ? { code: 'record.in-future', args: { at, now } } : null;
}

function staleFault({ seenVersion }: NewRecord, current: number): RecordRefusal | null {
  if (seenVersion === null || seenVersion === current) return null;
  return { code: 'record.stale', args: { seen: seenVersion, current } };
}

function placeFault(record: NewRecord, records: readonly SiteRecord[]): RecordRefusal | null {
  if (record.supersedes !== null) return supersedingFault(record, record.supersedes.id, records);
  if (record.body.kind === 'record-withdrawn') return { code: 'record.withdrawal-names-none', args: {} };
  return orderFault(record, records);
}

/** A record dated before the last one would let a test look newer than the work that voids it. */
function orderFault({ at, body }: NewRecord, records: readonly SiteRecord[]): RecordRefusal | null {
  if (RECORDED_WHENEVER.has(body.kind)) return null;
  const previousAt = standingRecords(records)
    .filter((earlier) => !RECORDED_WHENEVER.has(earlier.body.kind))
    .reduce<Instant | null>((last, earlier) => latest(last, earlier.at), null);
  if (previousAt === null || !isAfter(previousAt, at)) return null;
  return { code: 'record.before-previous', args: { at, previousAt } };
}

// Work on one run goes on in several places at once, so its records reach the book in any order.
const RECORDED_WHENEVER: ReadonlySet<string> = new Set([
  'end-closed',
  'end-opened',
  'slot-closed',
  'slot-opened',
  'activity-done',
  'insulation-test',
]);

function supersedingFault({ body }: NewRecord, id: string, records: readonly SiteRecord[]): RecordRefusal | null {
  const replaced = records.find((candidate) => candidate.id === id);
  if (replaced === undefined) return { code: 'record.nothing-superseded', args: { id } };
  if (records.some((candidate) => candidate.supersedes?.id === id))
    return { code: 'record.already-superseded', args: { id } };
  if (body.kind === 'record-withdrawn') return withdrawalFault(replaced);
  if (body.kind === replaced.body.kind) return null;
  return { code: 'record.supersedes-another-kind', args: { kind: body.kind, replaced: replaced.body.kind } };
}

/** What was once said to be open, wet or damaged is made good by work and release, never by taking the words back. */
export const STAYS_SAID: ReadonlySet<string> = new Set([
  'joint-reopened',
  'piece-quarantined',
  'end-opened',
  'slot-opened',
]);

/** A failed test stays in the book and counts until another test supersedes it with a cause. */
function withdrawalFault({ body, outcome }: SiteRecord): RecordRefusal | null {
  if (STAYS_SAID.has(body.kind)) return { code: 'record.cannot-withdraw', args: { kind: body.kind } };
  const test = body.kind === 'insulation-test' && outcome !== 'pass';
  return test ? { code: 'record.failed-test-withdrawn', args: { verdict: outcome ?? 'unknown' } } : null;
}
