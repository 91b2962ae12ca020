import type { RecordDocument } from '../../document/record-schema.ts';
import { toRecordBody } from '../../document/record-to-model.ts';
import type { InsulationTestBody, Outcome, SiteRecord, Subject } from '../../domain/quality/record.ts';

/** A row of the book of records, as the database gives it. */
export interface RecordRow {
  readonly id: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly body: unknown;
  readonly byUserId: string;
  readonly byName: string;
  readonly at: Date;
  readonly recordedAt: Date;
  readonly supersedesId: string | null;
  readonly cause: string | null;
  readonly outcome: string | null;
}

/** The row as the domain reads it. */
export function siteRecord(row: RecordRow): SiteRecord {
  return {
    id: row.id,
    subject: row.subject as Subject,
    subjectId: row.subjectId,
    at: row.at.toISOString(),
    recordedAt: row.recordedAt.toISOString(),
    by: { id: row.byUserId, name: row.byName },
    supersedes: row.supersedesId === null ? null : { id: row.supersedesId, cause: row.cause ?? '' },
    outcome: row.outcome as Outcome | null,
    body: toRecordBody(row.body as RecordDocument),
  };
}

export function isTest(record: SiteRecord): record is SiteRecord<InsulationTestBody> {
  return record.body.kind === 'insulation-test';
}
