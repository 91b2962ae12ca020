import { z } from 'zod';
import { subjectOf } from '../domain/quality/record.ts';
import { insulationTest } from './records/insulation-record.ts';
import { jointAccepted, jointReopened, jointStep } from './records/joint-records.ts';
import { pieceHung, pieceOnSite, pieceQuarantined, pieceReleased } from './records/piece-records.ts';
import { at, reason } from './records/record-fields.ts';
import { activityDone, endClosed, endOpened, slotClosed, slotOpened } from './records/run-records.ts';
import { supportAccepted, supportSet } from './records/support-records.ts';
import { dropSupported, tapChecked, tapOnSite, tapSet } from './records/tap-records.ts';

/**
 * Records of the floor as the API takes them and the book keeps them. Lengths are mm, times ISO 8601 with an offset, days
 * "2026-05-12". What a person left out is null, which is unknown and never nought.
 */
export const recordBodySchema = z
  .discriminatedUnion('kind', [
    pieceOnSite,
    pieceHung,
    pieceQuarantined,
    pieceReleased,
    jointStep,
    jointAccepted,
    jointReopened,
    supportSet,
    supportAccepted,
    tapOnSite,
    tapSet,
    tapChecked,
    dropSupported,
    endClosed,
    endOpened,
    slotClosed,
    slotOpened,
    activityDone,
    insulationTest,
    z.strictObject({ kind: z.literal('record-withdrawn') }).describe('Takes back the record named by `supersedes`'),
  ])
  .meta({ id: 'RecordBody', description: 'What was done or found, by kind' });
export type RecordDocument = z.output<typeof recordBodySchema>;
/** Every kind of record, in the order of the work. */
export const RECORD_KINDS = recordBodySchema.options.map((option) => option.shape.kind.value);

export const recordSchema = z
  .strictObject({
    submissionId: z
      .string()
      .regex(/^[A-Za-z0-9_-]{8,64}$/)
      .describe('Made by the device, so that a record sent twice is kept once'),
    at: at('When it was done; not in the future'),
    subject: z.enum(['piece', 'joint', 'support', 'tap', 'run']).describe('What the record speaks of'),
    subjectId: z.string().min(1).max(64).describe('Its permanent id'),
    seenVersion: z
      .number()
      .int()
      .min(1)
      .nullable()
      .default(null)
      .describe('Version of the subject on the screen; null where unknown'),
    supersedes: z
      .strictObject({
        id: z.string().min(1).max(64).describe('The record that this one replaces'),
        cause: reason('Why'),
      })
      .nullable()
      .default(null),
    body: recordBodySchema,
  })
  .refine(({ subject, body }) => (subjectOf(body.kind) ?? subject) === subject, {
    path: ['subject'],
    error: 'This kind of record speaks of another subject.',
  })
  .meta({ id: 'Record', description: 'One record of the floor: appended, never changed' });
export type RecordSubmission = z.output<typeof recordSchema>;
/** As a caller may write it, with what is unknown left out. */
export type RecordInput = z.input<typeof recordSchema>;
