import { z } from 'zod';
import { clearanceMm, coordinateMm, count, label, name, sizeMm } from './fields.ts';

export const conditionsSchema = z
  .strictObject({
    mountingHeightMm: clearanceMm('Height of the busway above the floor, mm').optional(),
    congestion: z.enum(['open', 'normal', 'tight']).describe('How crowded the ceiling is').optional(),
    liveArea: z.boolean().describe('Work beside equipment in service').optional(),
    storeysAboveGrade: count('Storeys that people and material climb; 0 at grade').optional(),
  })
  .describe('Conditions of work that the labour factors read');

export const levelSchema = z
  .strictObject({
    id: label('The level, such as F1'),
    name: name('What the level is called'),
    order: z.number().int().min(-10_000).max(10_000).describe('Order of work; no two levels share one'),
    elevationMm: coordinateMm('Elevation of the finished floor, mm').optional(),
    structureHeightMm: sizeMm('From the floor to the structure above, mm').optional(),
    conditions: conditionsSchema.optional(),
  })
  .meta({ id: 'Level', description: 'A level of the building' });

export type LevelDocument = z.infer<typeof levelSchema>;
