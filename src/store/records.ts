import type { RecordDocument } from '../document/record-schema.ts';
import { toRecordBody } from '../document/record-to-model.ts';
import type { Outcome, SiteRecord, Subject } from '../domain/quality/record.ts';
import type { Reader, Tx } from './database.ts';

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

/** Every record of these subjects, each subject's in the order of the book. A subject without records is absent. */
export async function recordsOf(
  reader: Reader,
  subjectIds: readonly string[],
): Promise<ReadonlyMap<string, readonly SiteRecord[]>> {
  const rows = await reader.inspection.findMany({
    where: { subjectId: { in: [...subjectIds] } },
    orderBy: [{ subjectId: 'asc' }, { seq: 'asc' }],
  });
  const found = new Map<string, SiteRecord[]>();
  for (const row of rows) {
    const own = found.get(row.subjectId);
    if (own) own.push(siteRecord(row));
    else found.set(row.subjectId, [siteRecord(row)]);
  }
  return found;
}

/** What is appended beside the record itself. */
export interface Entry {
  readonly projectId: string;
  readonly runId: string;
  /** The body as it was sent. */
  readonly body: RecordDocument;
  readonly submissionId: string;
  /** Of the audit entry written with it. */
  readonly seq: number;
}

export async function appendRecord(tx: Tx, record: SiteRecord, entry: Entry): Promise<void> {
  await tx.inspection.create({
    data: {
      id: record.id,
      projectId: entry.projectId,
      runId: entry.runId,
      subject: record.subject,
      subjectId: record.subjectId,
      kind: record.body.kind,
      body: entry.body as never,
      outcome: record.outcome,
      byUserId: record.by.id,
      byName: record.by.name,
      at: new Date(record.at),
      recordedAt: new Date(record.recordedAt),
      submissionId: entry.submissionId,
      supersedesId: record.supersedes?.id ?? null,
      cause: record.supersedes?.cause ?? null,
      seq: entry.seq,
    },
  });
}

interface Named {
  readonly subject: string;
  readonly subjectId: string;
  readonly runId: string;
}

/** What the subjects of these records are called on labels, and their run, by the subject's id. */
export async function marksOf(
  reader: Reader,
  records: readonly Named[],
): Promise<ReadonlyMap<string, { readonly mark: string; readonly run: string }>> {
  const ids = (subject: string) => [
    ...new Set(records.flatMap((one) => (one.subject === subject ? one.subjectId : []))),
  ];
  const marked = (subject: string) => ({ where: { id: { in: ids(subject) } }, select: { id: true, mark: true } });
  const [pieces, joints, supports, taps, runs] = await Promise.all([
    reader.piece.findMany(marked('piece')),
    reader.joint.findMany(marked('joint')),
    reader.support.findMany(marked('support')),
    reader.tap.findMany({ where: { id: { in: ids('tap') } }, select: { id: true, key: true } }),
    reader.run.findMany({
      where: { id: { in: [...new Set(records.map((one) => one.runId))] } },
      select: { id: true, key: true },
    }),
  ]);
  const keys = new Map(runs.map((run) => [run.id, run.key]));
  const marks = new Map([...pieces, ...joints, ...supports].map(({ id, mark }) => [id, mark]));
  const taken = new Map(taps.map(({ id, key }) => [id, key]));
  return new Map(
    records.map(({ subjectId, runId }) => {
      const run = keys.get(runId) ?? '';
      const tap = taken.get(subjectId);
      return [subjectId, { run, mark: marks.get(subjectId) ?? (tap === undefined ? run : `${run} ${tap}`) }];
    }),
  );
}
