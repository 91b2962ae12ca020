import { type RecordInput, recordBodySchema } from '../document/record-schema.ts';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { Remark } from '../domain/quality/remark.ts';
import type { Context, Viewer } from './context.ts';
import { takeRecord } from './records.ts';

/** What a form of the floor sends: the body as typed, and how long the phone kept it for lack of signal. */
export interface FieldRecord extends Pick<RecordInput, 'subject' | 'subjectId' | 'body'> {
  readonly submissionId: string;
  readonly seenVersion: number | null;
  readonly supersedes: { readonly id: string; readonly cause: string } | null;
  /** Milliseconds by the phone's own clock, which may be wrong; only the difference is used. */
  readonly heldMs: number;
}

/** The record as it stands in the book now, and what is worth telling beside it. */
export interface FieldTaken {
  readonly recordId: string;
  readonly remarks: readonly Remark[];
}

/**
 * Takes a record from a form. A form has no time of its own: what comes at once was done now, and what the phone kept was done
 * that much earlier. Since a second sending may have been kept longer, one that says the same as the first is simply
 * done: it is in the book already.
 */
export async function takeFieldRecord(
  context: Context,
  viewer: Viewer,
  projectId: string,
  { heldMs, ...record }: FieldRecord,
): Promise<FieldTaken> {
  const body = recordBodySchema.parse(record.body);
  const known = await context.database.db.inspection.findUnique({
    where: { projectId_submissionId: { projectId, submissionId: record.submissionId } },
    select: { id: true, byUserId: true, subjectId: true, body: true },
  });
  const isSame =
    known?.byUserId === viewer.userId &&
    known.subjectId === record.subjectId &&
    canonicalJson(known.body) === canonicalJson(body);
  if (known !== null && isSame) return { recordId: known.id, remarks: [] };
  const at = heldMs > 0 ? new Date(context.clock().getTime() - heldMs).toISOString() : null;
  const taken = await takeRecord(context, viewer, projectId, { ...record, body, at });
  return { recordId: taken.record.id, remarks: taken.remarks };
}
