import { z } from 'zod';
import { CONDUCTORS } from '../../domain/quality/conductors.ts';
import { note, text } from '../schema/fields.ts';
import { day, optionalNote, optionalText, reason, ticked } from './record-fields.ts';

export const jointStep = z.strictObject({
  kind: z.literal('joint-step'),
  step: z.number().int().min(0).max(59).describe('Step of the sheet, from 0'),
  text: note("The step's words as they were shown").min(1),
  poles: z
    .array(
      z.strictObject({
        pole: z.enum(CONDUCTORS).describe('Pole of the contact set'),
        near: ticked('Seen seated at the end towards the feed'),
        far: ticked('Seen seated at the end away from the feed'),
      }),
    )
    .max(CONDUCTORS.length)
    .nullable()
    .default(null)
    .describe('At the hold point: every pole, seen at both ends'),
  torque: z
    .strictObject({
      value: z.number().gt(0).max(10_000).describe('Torque applied'),
      unit: z.enum(['Nm', 'lbf-ft']).describe('Unit of the torque'),
      toolId: text('The torque tool').min(1),
      calibrationDue: day("Last day of the tool's calibration"),
    })
    .nullable()
    .default(null),
  lots: z
    .strictObject({ contactSet: optionalText('Lot of the contact set'), clamp: optionalText('Lot of the clamps') })
    .nullable()
    .default(null),
  note: optionalNote,
});

export const jointAccepted = z.strictObject({
  kind: z.literal('joint-accepted'),
  differencesRead: z
    .boolean()
    .default(false)
    .describe("Torques that differ from the sheet's, which states no tolerance, were read"),
  note: optionalNote,
});

export const jointReopened = z.strictObject({
  kind: z.literal('joint-reopened'),
  reason: reason('Why the joint was opened or has to be made again'),
  fromStep: z
    .number()
    .int()
    .min(0)
    .max(59)
    .nullable()
    .default(null)
    .describe('First step to do again, from 0; null is all of them'),
});
