import { z } from 'zod';
import {
  amperes,
  clearanceMm,
  count,
  impedanceSchema,
  kiloamperes,
  label,
  money,
  note,
  sizeMm,
  text,
  weightKg,
} from './fields.ts';

export const pricesSchema = z
  .strictObject({
    sections: z
      .array(z.strictObject({ lengthMm: sizeMm('Length of the section, mm'), price: money('Price of one section') }))
      .max(100)
      .describe('Price of each stock length')
      .optional(),
    sectionPerM: money('Price per metre of a length that has no price of its own').optional(),
    cutSurcharge: money('Added for each factory cut').optional(),
    jointKit: money('Clamps and contact sets of one joint').optional(),
    elbow: money('One elbow').optional(),
    tee: money('One tee').optional(),
    endFeed: money('One end feed').optional(),
    endCap: money('One end cap').optional(),
    support: money('One support complete').optional(),
    tap: money('One tap-off').optional(),
    drop: money('One drop cord').optional(),
  })
  .meta({ id: 'Prices', description: "Prices of the type's parts; an absent price is unknown, not nought" });

const fittingSchema = z.strictObject({
  legMm: sizeMm('Centre line to the face of each arm, mm'),
  weightKg: weightKg('Weight of the fitting, kg').optional(),
  handed: z.boolean().describe('Left and right hands are different parts; true when absent').optional(),
});

const jointSchema = z
  .strictObject({
    clamps: count('Clamps in one joint; 2 when absent').optional(),
    contactSets: count('Contact sets in one joint; 1 when absent').optional(),
    bolts: count('Bolts to torque in one joint; 2 when absent').optional(),
    torqueNm: z.number().gt(0).max(10_000).describe("Torque of the joint's bolts, N·m, from the sheet").optional(),
    steps: z
      .array(note('One step of the make-up').min(1))
      .max(60)
      .describe('The steps of the make-up, in order, from the sheet')
      .optional(),
  })
  .describe('What one joint takes and how it is made up');

export const buswayTypeSchema = z
  .strictObject({
    id: label('The type, in the words of the job'),
    sheet: z
      .strictObject({
        document: text('The data sheet or the instruction'),
        revision: text('Its revision'),
        date: text('Its date'),
      })
      .describe('Where the figures come from')
      .optional(),
    ratedCurrentA: amperes('Rated current, A'),
    ratedVoltageV: z.number().gt(0).max(100_000).describe('Rated voltage, V'),
    poles: z.number().int().min(1).max(4).describe('Phase conductors'),
    neutral: z.enum(['none', 'full', 'double']).describe('Size of the neutral beside the phases'),
    hundredPercentRated: z.boolean().describe('Marked for continuous duty at 100 % of the rating').optional(),
    phaseOhmPerKm: impedanceSchema,
    neutralOhmPerKm: impedanceSchema.optional(),
    shortCircuitKA: kiloamperes('Short-circuit rating, kA'),
    shortCircuitCycles: z.number().gt(0).max(1_000).describe('Duration of that rating, cycles').optional(),
    weightKgPerM: z.number().gt(0).max(10_000).describe('Weight of the busway, kg per metre'),
    stockLengthsMm: z.array(sizeMm('A stock length, mm', 1)).min(1).max(50).describe('Lengths that are made for stock'),
    factoryCut: z
      .strictObject({
        minMm: sizeMm('Shortest factory cut, mm'),
        maxMm: sizeMm('Longest factory cut, mm'),
        stepMm: sizeMm('Step of the factory cuts, mm'),
      })
      .describe('Lengths that can be ordered cut; null when there are none')
      .nullable(),
    feed: z
      .strictObject({
        joins: z.boolean().describe('The feed joins the first section by a joint').optional(),
        weightKg: weightKg('Weight of the feed, kg').optional(),
      })
      .optional(),
    support: z
      .strictObject({
        maxSpacingMm: sizeMm('Greatest distance between neighbours, mm').optional(),
        maxEndOverhangMm: clearanceMm('Greatest overhang past the first and the last support, mm').optional(),
        jointClearMm: clearanceMm("From a support to a joint's centre, mm").optional(),
        stepMm: sizeMm('Supports stand on multiples of this, mm', 1).optional(),
        fittingWithinMm: clearanceMm('A support stands within this of each face of a fitting, mm').optional(),
        source: text('Where the spacing is stated').optional(),
      })
      .optional(),
    tap: z
      .strictObject({
        jointClearMm: clearanceMm("From a tap's centre to a joint's centre, mm").optional(),
        endClearMm: clearanceMm("From a tap's centre to an end of the run, mm").optional(),
        minSpacingMm: clearanceMm('From tap centre to tap centre, mm').optional(),
        boxLengthMm: sizeMm('Length of the box along the run, mm').optional(),
        boxDepthMm: sizeMm("How far the box stands out from the busway's centre line, mm").optional(),
        boxHeightMm: sizeMm("Height of the box, mm; half of it above the busway's centre line").optional(),
        faceClearMm: clearanceMm('Room to be kept free before the face of the box, mm').optional(),
      })
      .optional(),
    crossing: z
      .strictObject({
        jointClearMm: clearanceMm("From the face of a wall or floor to a joint's centre, mm").optional(),
        supportClearMm: clearanceMm('From the face of a wall or floor to a support, mm').optional(),
      })
      .optional(),
    joint: jointSchema.optional(),
    fittings: z.strictObject({ elbow: fittingSchema.optional(), tee: fittingSchema.optional() }).optional(),
    words: z
      .strictObject({
        clamp: text("The sheet's word for the joint clamp").optional(),
        contactSet: text("The sheet's word for the contact set").optional(),
        seatingTool: text("The sheet's word for the seating tool").optional(),
      })
      .optional(),
    prices: pricesSchema.optional(),
  })
  .meta({ id: 'BuswayType', description: "A busway type: the maker's data sheet as the user typed it in" });

export type BuswayTypeDocument = z.infer<typeof buswayTypeSchema>;
