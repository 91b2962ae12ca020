import { z } from 'zod';
import { supportRow, supportRowSchema } from '../../../actions/cards/rows.ts';
import type { SupportCardView } from '../../../actions/cards.ts';
import { supportWindows } from '../../../domain/quality/support-window.ts';
import { toMm } from '../../../domain/units/length.ts';
import { cardShared, shared, stampOf, stampSchema } from './card-parts.ts';

export const supportCardSchema = supportRowSchema.extend({
  ...cardShared,
  windows: z
    .array(z.object({ fromMm: z.number(), toMm: z.number() }))
    .describe('Where it may stand between its neighbours, by the limits that the sheet states.'),
  set: stampSchema.nullable(),
  accepted: stampSchema.nullable(),
});

export function printSupport(view: SupportCardView): z.infer<typeof supportCardSchema> {
  const { floor, row, site } = view.at;
  return {
    ...supportRow(row, floor),
    ...shared(view),
    windows: supportWindows(site.around).map(({ from, to }) => ({ fromMm: toMm(from), toMm: toMm(to) })),
    set: stampOf(site.card.set),
    accepted: stampOf(site.card.accepted),
  };
}
