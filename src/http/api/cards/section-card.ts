import { z } from 'zod';
import { sectionRow, sectionRowSchema } from '../../../actions/cards/rows.ts';
import type { PieceCardView } from '../../../actions/cards.ts';
import { cardShared, shared, stampOf, stampSchema } from './card-parts.ts';

export const sectionCardSchema = sectionRowSchema.extend({
  ...cardShared,
  conductorSide: z.enum(['left', 'right']).describe('Side its conductors must lie on, seen along increasing distance.'),
  joints: z.array(z.object({ id: z.string(), mark: z.string(), state: z.string() })).describe('At its ends.'),
  onSite: stampSchema.nullable(),
  hung: stampSchema.nullable(),
  quarantine: stampSchema
    .extend({ reason: z.string(), office: stampSchema.nullable(), inspector: stampSchema.nullable() })
    .nullable()
    .describe('Released by two signatures, of the office and of an inspector.'),
});

export function printSection(view: PieceCardView): z.infer<typeof sectionCardSchema> {
  const { floor, row, site, joints } = view.at;
  const { onSite, hung, quarantine } = site.card;
  return {
    ...sectionRow(row, floor),
    ...shared(view),
    conductorSide: site.conductorSide,
    joints: joints.map(({ id, mark, state }) => ({ id, mark, state })),
    onSite: stampOf(onSite),
    hung: stampOf(hung),
    quarantine:
      quarantine === null
        ? null
        : {
            by: quarantine.by,
            at: quarantine.at,
            recordId: quarantine.recordId,
            reason: quarantine.reason,
            office: stampOf(quarantine.office),
            inspector: stampOf(quarantine.inspector),
          },
  };
}
