import { z } from 'zod';
import { tapRow, tapRowSchema } from '../../../actions/cards/rows.ts';
import type { TapCardView } from '../../../actions/cards.ts';
import { tapSchema } from '../../../document/schema/tap.ts';
import { toMm } from '../../../domain/units/length.ts';
import { cardShared, neighbourOf, neighbourSchema, shared, stampOf, stampSchema } from './card-parts.ts';

export const tapCardSchema = tapRowSchema.extend({
  ...cardShared,
  document: tapSchema.describe('As released.'),
  section: neighbourSchema.describe('The section that it sits on.'),
  onSite: stampSchema.nullable(),
  set: stampSchema.nullable(),
  checked: stampSchema.nullable(),
  dropSupported: stampSchema.extend({ distanceMm: z.number() }).nullable(),
});

export function printTap(view: TapCardView): z.infer<typeof tapCardSchema> {
  const { floor, row, site } = view.at;
  const { onSite, set, checked, dropSupported } = site.card;
  return {
    ...tapRow(row, floor),
    ...shared(view),
    document: tapSchema.parse(row.spec),
    section: neighbourOf(site.piece),
    onSite: stampOf(onSite),
    set: stampOf(set),
    checked: stampOf(checked),
    dropSupported:
      dropSupported === null
        ? null
        : {
            by: dropSupported.by,
            at: dropSupported.at,
            recordId: dropSupported.recordId,
            distanceMm: toMm(dropSupported.distance),
          },
  };
}
