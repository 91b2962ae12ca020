import { z } from 'zod';
import { bidCostEntries } from './bid-cost.ts';
import { bidOfferEntries } from './bid-offer.ts';
import { label, MAX_MINOR, money, name, note, percent } from './fields.ts';

export const extraSchema = z
  .strictObject({
    item: name('What is added'),
    level: label('The level it belongs to').optional(),
    quantity: z.number().min(0).max(1_000_000_000).describe('How many'),
    unit: name('What it is counted in'),
    price: z
      .number()
      .int()
      .min(-MAX_MINOR)
      .max(MAX_MINOR)
      .describe('Price of one, in whole minor units; a credit is negative')
      .optional(),
    hours: z.number().min(0).max(1_000_000).describe('Labour hours of one').optional(),
    note: note('Why it is there').optional(),
  })
  .meta({ id: 'Extra', description: 'A line that the estimator adds by hand, marked as such wherever it shows' });

export const bidSchema = z
  .strictObject({
    materials: money('Quoted material, in place of the priced takeoff').optional(),
    taxPercent: percent('Sales tax on material, %').optional(),
    other: money('Other direct cost').optional(),
    supervision: money('Supervision').optional(),
    overheadPercent: percent('Overhead on cost, %').optional(),
    profit: z
      .strictObject({
        kind: z.enum(['markup', 'margin']).describe('A markup is on cost, a margin is of the price'),
        percent: percent('%'),
      })
      .optional(),
    contingencyP: z
      .number()
      .gt(0)
      .lt(100)
      .describe('The chance, in %, that the hours will be enough; 80 is P80')
      .optional(),
    ...bidCostEntries,
    ...bidOfferEntries,
  })
  .meta({ id: 'Bid', description: 'What turns cost into a price' });

export type ExtraDocument = z.infer<typeof extraSchema>;
export type BidDocument = z.infer<typeof bidSchema>;
