import { type RecordInput, recordBodySchema } from '../document/record-schema.ts';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { Context, Viewer } from './context.ts';
import { type TakenRecord, takeRecord } from './records.ts';

/** What a form of the floor sends: the body as typed, and how long the phone kept it for lack of signal. */
export interface FieldRecord extends Pick<RecordInput, 'subject' | 'subjectId' | 'body'> {
  readonly submissionId: string;
  readonly seenVersion: number | null;
  readonly supersedes: { readonly id: string; readonly cause: string } | null;
  /** Milliseconds by the phone's own clock, which may be wrong; only the difference is used. */
  readonly heldMs: number;
}

/**
 * Takes a record from a form. A form has no time of its own: what comes at once was done now, and what the phone kept was done
 * that much earlier. Since a second sending may have been kept longer, one that says the same as the first is simply done:
 * null stands for "already in the book".
 */
export async function takeFieldRecord(
  context: Context,
  viewer: Viewer,
  projectId: string,
  { heldMs, ...record }: FieldRecord,
): Promise<TakenRecord | null> {
  const body = recordBodySchema.parse(record.body);
  const known = await context.database.db.inspection.findUnique({
    where: { projectId_submissionId: { projectId, submissionId: record.submissionId } },
    select: { byUserId: true, subjectId: true, body: true },
  });
  const isSame =
    known?.byUserId === viewer.userId &&
    known.subjectId === record.subjectId &&
    canonicalJson(known.body) === canonicalJson(body);
  if (isSame) return null;
  const at = heldMs > 0 ? new Date(context.clock().getTime() - heldMs).toISOString() : null;
  return takeRecord(context, viewer, projectId, { ...record, body, at });
}
