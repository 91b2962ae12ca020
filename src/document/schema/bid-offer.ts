import { z } from 'zod';
import { UNIT_ITEMS } from '../../domain/bid/bid-entries.ts';
import { day, money, name, note, sentence } from './fields.ts';

const sentences = (what: string) =>
  z.array(sentence('A sentence')).max(200).describe(`${what}, one an entry`).optional();

/** What goes out with the price. */
export const bidOfferEntries = {
  date: day('The day of the bid').optional(),
  validUntil: day('The last day that the bid holds').optional(),
  estimateClass: z.literal([1, 2, 3, 4, 5]).describe('Estimate class, 5 the roughest').optional(),
  alternates: z
    .array(
      z.strictObject({
        name: name('What is offered'),
        kind: z.enum(['add', 'deduct']).describe('What it does to the price'),
        materials: money('Its material').optional(),
        hours: z.number().min(0).max(1_000_000).describe('Its labour hours').optional(),
        subcontracts: money('Its subcontracts').optional(),
        other: money('Its other direct cost').optional(),
        note: note('What to heed').optional(),
      }),
    )
    .max(100)
    .describe('Alternates at their direct cost; the percentages of the bid go on them')
    .optional(),
  unitPrices: z
    .array(
      z.strictObject({
        item: z.enum(UNIT_ITEMS).describe('The thing that is to have a price of one'),
        material: money('Material of one, where the job has no price for it alone').optional(),
        offered: money('The price that is offered, where it is not the one worked').optional(),
      }),
    )
    .max(UNIT_ITEMS.length)
    .describe('What the bid form asks a unit price for')
    .optional(),
  inclusions: sentences('What is in the price'),
  exclusions: sentences('What is not in the price'),
  qualifications: sentences('What the price supposes'),
  addenda: z
    .array(
      z.strictObject({
        number: name('Its number'),
        date: day('Its date').optional(),
        note: note('What it changed').optional(),
      }),
    )
    .max(100)
    .describe('Addenda that the bid acknowledges')
    .optional(),
};
