import type { RecordSubmission } from '../document/record-schema.ts';
import { toNewRecord } from '../document/record-to-model.ts';
import { latest } from '../domain/quality/instant.ts';
import { type Actor, entered, type NewRecord } from '../domain/quality/record.ts';
import type { QualityRefusal } from '../domain/quality/refusal.ts';
import type { Remark } from '../domain/quality/remark.ts';
import { isUniqueViolation, type Tx } from '../store/database.ts';
import { appendRecord } from '../store/records.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { once } from './once.ts';
import { type Reach, reach } from './reach.ts';
import { type RecordView, recordView } from './records/record-view.ts';
import { reportedPieces } from './records/reported-pieces.ts';
import type { ReportedPieces } from './records/run-at.ts';
import { markAt, recordsAt, rule, type SubjectAt, standsAt, subjectAt, versionAt } from './records/subject-at.ts';
import { neededFor } from './records/who-may.ts';
import { type RecordRefused, refuse } from './refused.ts';

/**
 * A record as it is handed in. `at` null: done now, by the clock of the record; a form that lets nobody type the time sends
 * that, so that a double tap asks for the same thing twice.
 */
export type RecordEnvelope = Omit<RecordSubmission, 'at'> & { readonly at: string | null };

type Say = RecordRefused['say'];

/** What stands after a record was taken. A run has no state of its own: its status is reckoned. */
export interface TakenRecord {
  readonly record: RecordView;
  readonly remarks: readonly Remark[];
  /** How the job writes its figures, for the words of the remarks. */
  readonly say: Say;
  readonly stands: { readonly mark: string; readonly state: string | null; readonly version: number };
}

/**
 * The one way in which a record reaches the book: who may, the subject found on the floor, the domain asked, and then in one
 * transaction the record, the states that follow and the audit entry. What the domain refuses is thrown as `record-refused`
 * with the domain's own refusal and what stands now.
 *
 * The same `submissionId` sent again gives the first answer again and writes nothing; with another body it is refused.
 */
export async function takeRecord(
  context: Context,
  viewer: Viewer,
  projectId: string,
  envelope: RecordEnvelope,
): Promise<TakenRecord> {
  const counted = envelope.body.kind === 'activity-done';
  const pieces = counted ? await reportedPieces(context, viewer, projectId, envelope.subjectId) : undefined;
  return orFirstAnswer(() =>
    context.database.write(async (tx) => {
      const reached = await reach(tx, viewer, projectId);
      if (!reached.may('install') && !reached.may('inspect')) refuse({ code: 'forbidden', needs: 'install' });
      const { seenVersion: _seen, ...request } = envelope;
      const key = `record ${projectId} ${envelope.submissionId}`;
      return once(tx, context, viewer, { key, request }, async () => {
        await refuseTakenId(tx, projectId, envelope.submissionId);
        return enterRecord(tx, context, viewer, reached, projectId, envelope, pieces);
      });
    }),
  );
}

/** The same within a change that is already under way, by somebody whose reach was asked for. */
export async function enterRecord(
  tx: Tx,
  context: Context,
  viewer: Viewer,
  reached: Reach,
  projectId: string,
  envelope: RecordEnvelope,
  pieces?: ReportedPieces,
): Promise<TakenRecord> {
  const now = context.clock().toISOString();
  const at = await subjectAt(tx, projectId, envelope, now, { pieces });
  return enter(tx, context, viewer, { reached, at, now, envelope });
}

/** Two sendings at one moment: on the losing one the unique index speaks, and asked again it finds the first answer. */
async function orFirstAnswer(take: () => Promise<TakenRecord>): Promise<TakenRecord> {
  try {
    return await take();
  } catch (error) {
    if (!isUniqueViolation(error)) throw error;
    return take();
  }
}

/** Somebody else's record carries this id; one's own was found before. */
async function refuseTakenId(tx: Tx, projectId: string, submissionId: string): Promise<void> {
  const id = { projectId, submissionId };
  const taken = await tx.inspection.findUnique({ where: { projectId_submissionId: id }, select: { id: true } });
  if (taken !== null) refuse({ code: 'key-reused' });
}

interface Asked {
  readonly reached: Reach;
  readonly at: SubjectAt;
  readonly now: string;
  readonly envelope: RecordEnvelope;
}

async function enter(tx: Tx, context: Context, viewer: Viewer, { reached, at, now, envelope }: Asked) {
  const moment = new Date(envelope.at ?? now).toISOString();
  const asked = toNewRecord({ ...envelope, at: moment }, context.newId());
  assertMay(reached, at, asked);
  const actor: Actor = { id: viewer.userId, name: viewer.name, role: reached.role ?? 'office' };
  const ruling = rule(at, asked, actor);
  if (!ruling.ok) return refuseRecord(at, ruling.refusal);
  const record = { ...entered(asked, actor, arrival(at, now)), outcome: ruling.outcome };
  const seq = await audit(tx, context, viewer, {
    chain: at.floor.projectId,
    action: envelope.body.kind,
    subject: at.subject,
    subjectId: envelope.subjectId,
    after: { ...envelope, at: asked.at, mark: markAt(at), outcome: ruling.outcome, state: ruling.state },
  });
  await appendRecord(tx, record, {
    projectId: at.floor.projectId,
    runId: at.floor.id,
    body: envelope.body,
    submissionId: envelope.submissionId,
    seq,
  });
  await ruling.save(tx);
  const placed = { run: at.floor.key, mark: markAt(at), supersededBy: null, body: envelope.body };
  return {
    record: recordView(record, placed),
    remarks: ruling.remarks,
    say: sayOf(at),
    stands: { mark: markAt(at), state: ruling.state, version: versionAt(at) + 1 },
  };
}

function assertMay(reached: Reach, at: SubjectAt, { body, supersedes }: NewRecord): void {
  const replaced = recordsAt(at).find((record) => record.id === supersedes?.id)?.body ?? null;
  const steps = at.subject === 'joint' ? at.site.card.sheet.steps : null;
  const needed = neededFor(body, replaced, steps);
  if (!needed.some((capability) => reached.may(capability))) refuse({ code: 'forbidden', needs: needed.join(' or ') });
}

function refuseRecord(at: SubjectAt, refusal: QualityRefusal): never {
  return refuse({
    code: 'record-refused',
    refusal,
    say: sayOf(at),
    current: standsAt(at),
    version: versionAt(at),
  });
}

function sayOf({ floor }: SubjectAt): Say {
  const { units, timeZone } = floor.project.document;
  return { units, zone: timeZone ?? null };
}

/** Of two server processes one clock may run behind: within a subject the book's times never go back. */
function arrival(at: SubjectAt, now: string): string {
  return recordsAt(at).reduce((last, record) => latest(last, record.recordedAt) ?? last, now);
}
