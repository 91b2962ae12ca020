import { z } from 'zod';
import { detailHash, firstBreak } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';

export const auditEntrySchema = z.object({
  seq: z.number().int(),
  at: z.string(),
  userName: z.string(),
  action: z.string(),
  subject: z.string(),
  subjectId: z.string(),
  money: z.boolean(),
  before: z.unknown().optional(),
  after: z.unknown().optional(),
  detailHash: z.string().describe('SHA-256 of before and after: the chain verifies without them.'),
  previousHash: z.string(),
  hash: z.string(),
});
export type AuditView = z.infer<typeof auditEntrySchema>;

/** A job's trail, newest first. What touches money is shown to the office alone; its hash still verifies. */
export async function listAudit(
  context: Context,
  viewer: Viewer,
  projectId: string,
  page: PageQuery,
): Promise<Listed<AuditView> & { firstBreak: number | null }> {
  const { db } = context.database;
  const reached = await reach(db, viewer, projectId, 'audit');
  const [rows, total, broken] = await Promise.all([
    db.auditEntry.findMany({ where: { chain: projectId }, orderBy: { seq: 'desc' }, ...cut(page) }),
    db.auditEntry.count({ where: { chain: projectId } }),
    firstBreak(db, projectId),
  ]);
  return {
    items: rows.map((row) => viewOf(row, reached.may('money'))),
    total,
    page: page.page,
    limit: page.limit,
    firstBreak: broken,
  };
}

interface Row {
  readonly seq: number;
  readonly at: Date;
  readonly userName: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly money: boolean;
  readonly before: unknown;
  readonly after: unknown;
  readonly previousHash: string;
  readonly hash: string;
}

export function viewOf(row: Row, money: boolean): AuditView {
  const { seq, userName, action, subject, subjectId, previousHash, hash } = row;
  const head = {
    seq,
    at: row.at.toISOString(),
    userName,
    action,
    subject,
    subjectId,
    money: row.money,
    detailHash: detailHash(row.before, row.after),
    previousHash,
    hash,
  };
  return row.money && !money ? head : { ...head, before: row.before ?? null, after: row.after ?? null };
}
