import { z } from 'zod';
import { distanceMm } from '../schema/fields.ts';
import { optionalNote, ticked } from './record-fields.ts';

export const supportSet = z.strictObject({
  kind: z.literal('support-set'),
  measuredMm: distanceMm('Distance from the feed as measured, mm').nullable().default(null),
  rodPlumb: ticked('Rod plumb'),
  loadNut: ticked('Load nut set'),
  lockNut: ticked('Lock nut set'),
  note: optionalNote,
});

export const supportAccepted = z.strictObject({ kind: z.literal('support-accepted'), note: optionalNote });
