import { z } from 'zod';
import { ACTIVITIES } from '../../domain/labour/result.ts';
import { ORDER_ITEMS } from '../../domain/ordering/ordering.ts';
import { count, label, name, note, percent, sizeMm, text } from './fields.ts';

const item = z.enum(ORDER_ITEMS);

const spareSchema = z
  .strictObject({
    item: item.describe('What it is about'),
    type: label('Only of this busway type').optional(),
    kind: text('Only of this kind: "cut" of sections, "L1-N 30 A" of tap-offs and cords, "3/8" of rod').optional(),
    hand: z
      .enum(['inside', 'outside', 'slot-inside', 'slot-outside', 'near-left', 'near-right', 'far-left', 'far-right'])
      .describe('Only of this hand')
      .optional(),
    lengthMm: sizeMm('Only of this length, mm').optional(),
    wastePercent: percent('Broken or lost in the work, % of what is taken in').optional(),
    percent: percent('Spares, % of what is taken in').optional(),
    minimum: count('Spares, at least this many').optional(),
    ownerSpares: count('Spares that are handed to the owner, apart from those of the work').optional(),
  })
  .describe('The first rule that fits a thing is its rule');

const toolSchema = z.strictObject({
  tool: name('The tool'),
  perCrew: count('How many one crew needs'),
  activity: z.enum(ACTIVITIES).describe('Only crews that do this work need it; every crew when absent').optional(),
  crews: count('How many crews, by hand; as the crew plan has them when absent').optional(),
  note: note('What to heed').optional(),
});

export const orderingSchema = z
  .strictObject({
    spares: z.array(spareSchema).max(200).describe('Waste, spares of the work and spares of the owner').optional(),
    leadDays: z
      .array(z.strictObject({ item, days: z.number().int().min(0).max(2_000).describe('Calendar days') }))
      .max(ORDER_ITEMS.length)
      .describe('From placing the order to the goods on the floor')
      .optional(),
    plan: z
      .enum(['continuous', 'earliest'])
      .describe('Which crew plan the need dates are of: no crew stands (when absent), or as soon as possible')
      .optional(),
    cordStockMm: z.array(sizeMm('A length, mm')).max(50).describe('Lengths that drop cords are made in').optional(),
    closure: z
      .strictObject({
        stockMm: sizeMm('Length of one strip, mm', 10),
        wastePercent: percent('Waste on the strips, %').optional(),
      })
      .describe('The strip that closes the slot')
      .optional(),
    washersPerRod: count('Washers on one hanger rod').optional(),
    braceEverySupports: z
      .number()
      .int()
      .min(1)
      .max(10_000)
      .describe('An allowance: one brace for so many hangers of a run, or part of them')
      .optional(),
    tools: z.array(toolSchema).max(200).describe('Tools by crew').optional(),
  })
  .meta({ id: 'Ordering', description: "The job's own rules for ordering: no money in it" });

export type OrderingDocument = z.infer<typeof orderingSchema>;
