import { z } from 'zod';
import { QUOTED_ITEMS, TAXABLE, UNIT_ITEMS } from '../../domain/bid/bid-entries.ts';
import { day, label, money, name, note, percent } from './fields.ts';

const quoteLineSchema = z.strictObject({
  item: z
    .enum(QUOTED_ITEMS)
    .describe('What the line is for; lot: all that the takeoff counts, or all of a subcontract'),
  detail: name('What it is more exactly').optional(),
  state: z.enum(['priced', 'included', 'lacks']).describe('At its own amount, held by another line, or not offered'),
  amount: money('What is asked; of a line that lacks, the plug that stands in for it').optional(),
});

export const quoteSchema = z
  .strictObject({
    id: label('What the quote is called on the job'),
    package: name('What it is for; quotes of one package are rivals'),
    goesTo: z
      .enum(['materials', 'subcontracts'])
      .describe('The line of the bid that it goes to; materials when absent')
      .optional(),
    supplier: name('Who quotes'),
    date: day('Its date').optional(),
    validUntil: day('The last day it holds').optional(),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .describe("Its currency, by ISO 4217; the project's when absent")
      .optional(),
    freight: z.enum(['in', 'out']).describe('Whether freight is in its amounts; not known when absent').optional(),
    freightAmount: money('What the freight costs where it is out').optional(),
    tax: z.enum(['in', 'out']).describe('Whether tax is in its amounts; not known when absent').optional(),
    taxAmount: money('The tax in its amounts').optional(),
    firm: z.boolean().describe('Held until delivery: no escalation; false when absent').optional(),
    chosen: z.boolean().describe('In the price; false when absent').optional(),
    note: note('What to heed').optional(),
    lines: z.array(quoteLineSchema).max(200).describe('What it prices, includes and lacks'),
  })
  .meta({ id: 'Quote', description: 'A quote of a supplier or subcontractor, line by line' });

const consumables = {
  consumables: money('Consumables, as a sum').optional(),
  consumablesPercent: percent('Consumables, % of labour; in place of a sum').optional(),
};

/** What a bid may hold of cost beyond its sums for material, other cost and supervision. */
export const bidCostEntries = {
  wastePercent: percent('Waste on material bought by our own count, %').optional(),
  escalationPercent: percent('Escalation on material and its waste, %').optional(),
  spares: money(
    'Spares, in place of those that the rules for ordering give at the prices of the types; 0 where the material holds them',
  ).optional(),
  ownerFurnished: z
    .array(z.enum(UNIT_ITEMS))
    .max(UNIT_ITEMS.length)
    .describe('What the owner furnishes and is only installed: neither bought nor taxed')
    .optional(),
  freight: money('Freight of its own').optional(),
  ...consumables,
  permit: money('Permits and inspections by the authority').optional(),
  taxes: z
    .array(
      z.strictObject({
        name: name('What the tax is called'),
        percent: percent('%'),
        on: z.array(z.enum(TAXABLE)).min(1).max(TAXABLE.length).describe('The lines of the bid that it is due on'),
      }),
    )
    .max(20)
    .describe('Taxes by category')
    .optional(),
  quotes: z.array(quoteSchema).max(100).describe('Quotes, those of one package side by side').optional(),
  timed: z
    .array(
      z.strictObject({
        item: name('What is paid by time: a lift, a tool, somebody who is not in the hours'),
        goesTo: z.enum(['equipment', 'supervision']).describe('The line of the bid; equipment when absent').optional(),
        number: z.number().gt(0).max(10_000).describe('How many'),
        time: z.number().gt(0).max(10_000).describe('For how long, each'),
        per: z.enum(['day', 'week', 'month']).describe('What the time is counted in'),
        rate: money('What one costs for one day, week or month').optional(),
        once: money('Paid once, as delivery and collection').optional(),
      }),
    )
    .max(200)
    .describe('Lifts, tools and supervision by duration')
    .optional(),
  subcontracts: z
    .array(
      z.strictObject({
        item: name('The subcontract'),
        work: z.enum(['fire-sealing', 'testing', 'other']).describe('What it does; other when absent').optional(),
        amount: money('What it costs').optional(),
      }),
    )
    .max(200)
    .describe('Subcontracts that are entered as a sum')
    .optional(),
  bond: z
    .strictObject({
      percent: percent('The premium, %; with a scale that of what lies above its steps'),
      of: z.enum(['price', 'cost']).describe('Of the price, or of cost with overhead'),
      scale: z
        .array(
          z.strictObject({
            amount: money('The first or next so much of what it is reckoned on').min(1),
            percent: percent('The premium on this step, %'),
          }),
        )
        .min(1)
        .max(20)
        .describe('A sliding scale: steps from the bottom up; what lies above them takes the percentage beside')
        .optional(),
    })
    .optional(),
};
