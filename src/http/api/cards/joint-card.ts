import { z } from 'zod';
import { jointRow, jointRowSchema } from '../../../actions/cards/rows.ts';
import type { JointCardView } from '../../../actions/cards.ts';
import type { CardStep } from '../../../domain/quality/joint-card.ts';
import {
  cardShared,
  neighbourOf,
  neighbourSchema,
  remarkTold,
  shared,
  speechOf,
  stampOf,
  stampSchema,
  toldSchema,
} from './card-parts.ts';

const torqueSchema = z.object({
  appliedNm: z.number(),
  statedNm: z.number().nullable(),
  differencePercent: z.number().nullable(),
  verdict: z.enum(['as-stated', 'within', 'outside', 'unjudged']),
});

const stepSchema = z.object({
  step: z.number().int().describe('From 0.'),
  text: z.string(),
  kind: z.enum(['work', 'hold', 'torque', 'check']),
  done: stampSchema.extend({ torque: torqueSchema.nullable() }).nullable(),
});

export const jointCardSchema = jointRowSchema.extend({
  ...cardShared,
  neighbours: z.array(neighbourSchema).describe('The pieces that it joins; both hang before a step is done.'),
  poles: z.array(z.string()).describe('Seen seated at both ends at the hold point.'),
  torqueNm: z.number().nullable().describe("The sheet's; null where it states none."),
  steps: z.array(stepSchema).nullable().describe('null: the sheet names no steps, and the joint cannot be accepted.'),
  next: z.number().int().nullable().describe('The next step, from 0.'),
  installers: z.array(z.object({ id: z.string(), name: z.string() })).describe('None of them may accept it.'),
  accepted: stampSchema.nullable(),
  reopenings: z.array(stampSchema.extend({ reason: z.string(), fromStep: z.number().int() })),
  uncredited: z
    .array(z.object({ stamp: stampSchema, step: z.number().int(), remarks: z.array(toldSchema) }))
    .describe('Records that stand in the book and credit nothing.'),
  remarks: z.array(toldSchema),
});

export function printJoint(view: JointCardView): z.infer<typeof jointCardSchema> {
  const { floor, row, site } = view.at;
  const { card } = site;
  const say = speechOf(view.at);
  return {
    ...jointRow(row, floor),
    ...shared(view),
    neighbours: site.neighbours.map(neighbourOf),
    poles: [...card.sheet.poles],
    torqueNm: card.sheet.torqueNm,
    steps: card.sheet.steps === null ? null : card.steps.map(stepOf),
    next: card.next?.index ?? null,
    installers: card.installers.map(({ id, name }) => ({ id, name })),
    accepted: stampOf(card.accepted),
    reopenings: card.reopenings.map(({ by, at, recordId, reason, fromStep }) => ({
      by,
      at,
      recordId,
      reason,
      fromStep,
    })),
    uncredited: card.uncredited.map(({ stamp, step, remarks }) => ({
      stamp: { by: stamp.by, at: stamp.at, recordId: stamp.recordId },
      step,
      remarks: remarks.map((remark) => remarkTold(remark, say)),
    })),
    remarks: card.remarks.map((remark) => remarkTold(remark, say)),
  };
}

function stepOf({ index, text, kind, done }: CardStep): z.infer<typeof stepSchema> {
  if (done === null) return { step: index, text, kind, done: null };
  const { by, at, recordId, torque } = done;
  return { step: index, text, kind, done: { by, at, recordId, torque: torque === null ? null : judged(torque) } };
}

function judged({ appliedNm, statedNm, differencePercent, verdict }: z.infer<typeof torqueSchema>) {
  return { appliedNm, statedNm, differencePercent, verdict };
}
