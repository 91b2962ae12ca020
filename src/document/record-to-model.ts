import type { NewRecord, RecordBody } from '../domain/quality/record.ts';
import { fromMm } from '../domain/units/length.ts';
import { lengthOrNull } from './model/to-length.ts';
import type { RecordDocument, RecordSubmission } from './record-schema.ts';

/** A record's body as the domain reads it: the same, with its lengths as integers. */
export function toRecordBody(body: RecordDocument): RecordBody {
  switch (body.kind) {
    case 'support-set': {
      const { measuredMm, ...rest } = body;
      return { ...rest, measured: lengthOrNull(measuredMm ?? undefined) };
    }
    case 'drop-supported': {
      const { distanceMm, ...rest } = body;
      return { ...rest, distance: fromMm(distanceMm) };
    }
    case 'insulation-test': {
      const { lengthTypedMm, ...rest } = body;
      return { ...rest, lengthTyped: lengthOrNull(lengthTypedMm ?? undefined) };
    }
    default:
      return body;
  }
}

/** A submission as a record to decide on, under the id that it will have in the book. */
export function toNewRecord(submission: RecordSubmission, id: string): NewRecord {
  const { at, subject, subjectId, seenVersion, supersedes, body } = submission;
  return { id, subject, subjectId, at, seenVersion, supersedes, body: toRecordBody(body) };
}
