import { z } from 'zod';
import { REPORTED_ACTIVITIES } from '../../domain/quality/record-bodies.ts';
import { optionalNote, reason, ticked } from './record-fields.ts';

const end = z.enum(['near', 'far']).describe('End of the run: near is distance 0');

export const endClosed = z.strictObject({
  kind: z.literal('end-closed'),
  end,
  capFitted: ticked('Cap fitted'),
  screwSet: ticked('Screw set'),
});

export const endOpened = z.strictObject({
  kind: z.literal('end-opened'),
  end,
  reason: reason('Why the end was opened'),
});

export const slotClosed = z.strictObject({ kind: z.literal('slot-closed'), note: optionalNote });

export const slotOpened = z.strictObject({ kind: z.literal('slot-opened'), reason: reason('Why the slot was opened') });

export const activityDone = z.strictObject({
  kind: z.literal('activity-done'),
  activity: z.enum(REPORTED_ACTIVITIES).describe('Work that only a record can say is done'),
  quantity: z
    .number()
    .int()
    .min(1)
    .max(10_000)
    .nullable()
    .default(null)
    .describe('Pieces done; null is all of the run'),
  note: optionalNote,
});
