import { z } from 'zod';
import { name, side } from '../schema/fields.ts';
import { optionalText, reason } from './record-fields.ts';

export const pieceOnSite = z.strictObject({ kind: z.literal('piece-on-site'), lot: optionalText('Lot or crate') });

export const pieceHung = z.strictObject({
  kind: z.literal('piece-hung'),
  conductorSide: side('Side of the conductors, seen along increasing distance with the slot down'),
  endsConfirmedBy: name('Second person who saw the side at both ends').nullable().default(null),
});

export const pieceQuarantined = z.strictObject({
  kind: z.literal('piece-quarantined'),
  reason: reason('What is wrong with the piece'),
});

export const pieceReleased = z
  .strictObject({
    kind: z.literal('piece-released'),
    as: z.enum(['office', 'inspector']).describe('The role in which this signature is given'),
    reason: reason('Why the piece may be used'),
    decision: optionalText('The written decision: document and date'),
  })
  .describe('One of the two signatures that release takes: office and inspector, each under the own login');
