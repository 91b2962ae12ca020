import { z } from 'zod';
import { amperes, clearanceMm, coordinateMm, count, kiloamperes, sizeMm } from '../schema/fields.ts';
import { RODS, runSchema } from '../schema/run.ts';
import { MOST_MADE } from './plan.ts';

const { level, type, conductorSide, area, supportCapacityKg } = runSchema.shape;

/** What may be changed of many runs at once; what is left out stays, null takes it away. */
export const bulkSetSchema = z
  .strictObject({
    level: level.optional(),
    type: type.optional(),
    area: area.unwrap().nullable().optional(),
    side: z.enum(['A', 'B']).nullable().optional(),
    conductorSide: conductorSide.optional(),
    elevationMm: coordinateMm('Start above the floor, mm').optional(),
    supply: z.string().max(200).nullable().optional().describe('The board or unit that feeds the runs'),
    deviceA: amperes('Rating of the upstream protective device, A').nullable().optional(),
    faultKA: kiloamperes('Fault current at the source, kA').nullable().optional(),
    xOverR: z.number().min(0).max(1_000).nullable().optional().describe('X/R of the source'),
    terminations: count('Conductors to terminate at the feed').optional(),
    structure: z
      .discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('continuous') }),
        z.strictObject({
          kind: z.literal('grid'),
          pitchMm: sizeMm('Distance between lines, mm', 10),
          offsetMm: coordinateMm('First line, mm'),
        }),
      ])
      .nullable()
      .optional(),
    end: z
      .strictObject({
        shortMm: clearanceMm('The last leg may end so much before its length, mm'),
        longMm: clearanceMm('and so much beyond it, mm'),
      })
      .nullable()
      .optional()
      .describe('What the last leg may be covered to; null: exactly its length'),
    dropMm: clearanceMm('Rod for each hanger, mm').nullable().optional(),
    rod: z.enum(RODS).nullable().optional(),
    rodStockMm: sizeMm('Length that rod is bought in, mm').nullable().optional(),
    attachment: z.enum(['anchor', 'beam-clamp', 'trapeze', 'strut']).nullable().optional(),
    supportCapacityKg: supportCapacityKg.unwrap().nullable().optional(),
  })
  .meta({ id: 'RunFieldsTogether' });
export type BulkSet = z.infer<typeof bulkSetSchema>;
export type BulkField = keyof BulkSet;
export const BULK_FIELDS = Object.keys(bulkSetSchema.shape) as readonly BulkField[];

export const bulkAskedSchema = z
  .strictObject({
    runs: z.array(z.string()).max(MOST_MADE).describe('Runs to change, by their label in the job document.'),
    set: bulkSetSchema,
  })
  .meta({ id: 'RunChangesTogether' });
export type BulkAsked = z.infer<typeof bulkAskedSchema>;
