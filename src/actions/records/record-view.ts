import { z } from 'zod';
import { type RecordDocument, recordBodySchema } from '../../document/record-schema.ts';
import { VERDICTS } from '../../domain/quality/insulation/verdict.ts';
import type { SiteRecord } from '../../domain/quality/record.ts';
import { type RecordRow, siteRecord } from '../../store/records.ts';

export const SUBJECTS = ['piece', 'joint', 'support', 'tap', 'run'] as const;
export const OUTCOMES = ['credited', ...VERDICTS] as const;

export const recordViewSchema = z.object({
  id: z.string(),
  subject: z.enum(SUBJECTS),
  subjectId: z.string(),
  run: z.string().describe('The run in the job document, "F1-R1-A".'),
  mark: z.string().describe('What the subject is called on labels, "F1-R1-A-J03".'),
  at: z.string().describe('When it was done, as said.'),
  recordedAt: z.string().describe('When it reached the book.'),
  by: z.object({ id: z.string(), name: z.string() }),
  outcome: z
    .enum(OUTCOMES)
    .nullable()
    .describe('How it was judged: the verdict of a test; `information-only` is kept and credits nothing.'),
  supersedes: z.object({ id: z.string(), cause: z.string() }).nullable().describe('The record it replaces, and why.'),
  supersededBy: z.string().nullable().describe('The record that replaced it; both stay in the book.'),
  body: recordBodySchema,
});
export type RecordView = z.infer<typeof recordViewSchema>;

interface Placed {
  readonly run: string;
  readonly mark: string;
  readonly supersededBy: string | null;
  /** As it was sent. */
  readonly body: RecordDocument;
}

export function recordView(record: Omit<SiteRecord, 'body'>, placed: Placed): RecordView {
  const { id, subject, subjectId, at, recordedAt, by, outcome, supersedes } = record;
  return { id, subject, subjectId, at, recordedAt, by, outcome, supersedes, ...placed };
}

export function viewOfRow(row: RecordRow, placed: Omit<Placed, 'body'>): RecordView {
  return recordView(siteRecord(row), { ...placed, body: row.body as RecordDocument });
}
