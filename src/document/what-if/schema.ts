import { z } from 'zod';
import { clearanceMm, label, MAX_LEG_MM, percent, sizeMm } from '../schema/fields.ts';

const few = 200;

/** What one asks "what if" of: everything is optional, and what is left out stays as it is. */
export const whatIfSchema = z
  .strictObject({
    conditions: z
      .array(
        z.strictObject({
          level: label('The level').nullable().describe('null: every level'),
          mountingHeightMm: clearanceMm('Mounting height, mm').optional(),
          congestion: z.enum(['open', 'normal', 'tight']).optional(),
          liveArea: z.boolean().optional(),
        }),
      )
      .max(few)
      .describe('Conditions of work, by level; a later entry goes before an earlier one')
      .optional(),
    policy: z.enum(['add', 'compound']).describe('How the factors of a line meet').optional(),
    nonProductivePercent: z
      .number()
      .min(0)
      .max(100)
      .describe('In place of whatever the book says of non-working time, %')
      .optional(),
    learning: z
      .union([
        z.literal('none'),
        z.strictObject({
          rate: z.number().gt(0).max(1).optional(),
          referenceRepeat: z.number().gt(0).max(100_000).optional(),
        }),
      ])
      .describe('`none`, or what of the book’s learning is other')
      .optional(),
    factors: z
      .strictObject({
        normalPercent: percent('Normal ceiling, + %').optional(),
        tightPercent: percent('Tight ceiling, + %').optional(),
        storeyPercentEach: percent('Each storey, + %').optional(),
        livePercent: percent('Beside equipment in service, + %').optional(),
      })
      .describe('Percentages of the book')
      .optional(),
    activities: z
      .array(z.strictObject({ activity: label('The activity'), likely: z.number().gt(0).max(10_000) }))
      .max(few)
      .describe('Likely hours of one unit; low, high and the hours by length move in the same proportion')
      .optional(),
    types: z
      .array(
        z.strictObject({
          from: label('The type it is'),
          to: label('The type it would be'),
          level: label('On this level alone').nullable(),
        }),
      )
      .max(few)
      .describe('Another busway type for the runs of one')
      .optional(),
    stock: z
      .array(
        z.strictObject({ type: label('The type'), lengthsMm: z.array(sizeMm('A stock length, mm')).min(1).max(50) }),
      )
      .max(few)
      .describe('Other stock lengths of a type')
      .optional(),
    routes: z
      .array(
        z.strictObject({
          run: label('The run'),
          legsMm: z
            .array(sizeMm('Length of a leg, mm', 1).max(MAX_LEG_MM))
            .min(1)
            .max(200)
            .describe('Every leg, in order')
            .optional(),
          dropMm: clearanceMm('Rod for each hanger, mm').optional(),
        }),
      )
      .max(few)
      .describe('Other lengths of a run’s legs, or another rod')
      .optional(),
  })
  .meta({ id: 'WhatIf', description: 'A change to compare with the job as it stands; it is never written to the job' });

export type WhatIf = z.infer<typeof whatIfSchema>;
