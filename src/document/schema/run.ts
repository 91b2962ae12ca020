import { z } from 'zod';
import {
  amperes,
  clearanceMm,
  coordinateMm,
  count,
  distanceMm,
  impedanceSchema,
  kiloamperes,
  label,
  name,
  side,
  sizeMm,
  text,
  weightKg,
} from './fields.ts';
import { tapSchema } from './tap.ts';

export const FEED_KINDS = ['end', 'centre', 'tee'] as const;
export const TURNS = ['none', 'left', 'right', 'up', 'down'] as const;
export const RODS = ['3/8', '1/2', '5/8', 'M10', 'M12', 'M16'] as const;

const cableSchema = z
  .strictObject({
    lengthM: z.number().min(0).max(100_000).describe('Length of the feeder cable, m'),
    ohmPerKm: impedanceSchema,
    parallel: z.number().int().min(1).max(100).describe('Parallel sets; 1 when absent').optional(),
    neutralOhmPerKm: impedanceSchema.optional(),
  })
  .describe('The cable from the source to the feed');

export const feedSchema = z
  .strictObject({
    kind: z.enum(FEED_KINDS).describe('Fed at one end, in the middle, or as a branch from a tee'),
    fromRun: label('The run that the tee stands in').optional(),
    atMm: distanceMm("Distance of the tee's or the centre feed's centre, mm").optional(),
    branchSide: side('The side the branch leaves on, looking along the parent run').optional(),
    supply: text('The board or unit that feeds the run').optional(),
    deviceA: amperes('Rating of the upstream protective device, A').optional(),
    deviceHundredPercent: z.boolean().describe('The device and its assembly are listed for 100 %').optional(),
    faultKA: kiloamperes('Three-phase symmetrical fault current at the source, kA').optional(),
    xOverR: z.number().min(0).max(1_000).describe('X/R of the source').optional(),
    cable: cableSchema.optional(),
    terminations: count('Conductors to terminate at the feed; 0 when absent').optional(),
  })
  .describe('How the run is fed');

export const legSchema = z.strictObject({
  lengthMm: sizeMm('Length of the leg, centre line to centre line, mm'),
  turn: z.enum(TURNS).describe('The turn at the end of the leg'),
  tapsMustFace: side('The side that taps must face on this leg, looking along increasing distance').optional(),
});

export const crossingSchema = z.strictObject({
  atMm: distanceMm("Distance of the wall's or floor's centre, mm"),
  thicknessMm: sizeMm('Thickness along the run, mm'),
  kind: z.enum(['wall', 'fire-wall', 'floor']).describe('What the run passes'),
  fireRatingMin: z.number().min(0).max(1_000).describe('Fire rating, minutes').optional(),
});

export const zoneSchema = z.strictObject({
  fromMm: distanceMm('Where the zone begins, mm'),
  toMm: distanceMm('Where the zone ends, mm'),
  reason: name('What stands there').optional(),
});

const structureSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('continuous') }),
    z.strictObject({
      kind: z.literal('grid'),
      pitchMm: sizeMm('Distance between the lines that can carry a support, mm', 10),
      offsetMm: coordinateMm('Distance of the first of those lines, mm'),
    }),
  ])
  .describe('Where the structure can carry a support; anywhere when absent');

export const fieldHoldSchema = z
  .strictObject({
    sections: z
      .array(
        z.strictObject({
          fromMm: distanceMm('Where the section begins, mm'),
          toMm: distanceMm('Where it ends, mm'),
          kind: z.enum(['stock', 'cut']).describe('A stock length or a factory cut'),
        }),
      )
      .min(1)
      .max(1_000)
      .describe('The straight sections that the floor put in, in order from the feed'),
    supportsMm: z.array(distanceMm('Where a hanger stands, mm')).max(10_000).describe('The hangers as they stood then'),
  })
  .describe('What the floor substituted: a layout keeps to it while the route lets it; nothing is held when absent');

export const runSchema = z
  .strictObject({
    id: label('The run, such as F1-R1-A'),
    level: label('The level it hangs on'),
    area: text('The room or area').optional(),
    type: label('Its busway type'),
    side: z.enum(['A', 'B']).describe('Feed side: A-side or B-side').nullable().optional(),
    pairedRun: label("The run of the other side that serves the same equipment's other taps").optional(),
    start: z
      .strictObject({
        xMm: coordinateMm('East of the origin, mm'),
        yMm: coordinateMm('North of the origin, mm'),
        zMm: coordinateMm('Above the floor, mm'),
      })
      .describe('Where the run begins')
      .optional(),
    headingDeg: z
      .number()
      .min(-360)
      .max(360)
      .describe('Heading of the first leg: 0 is +x (east), 90 is +y (north)')
      .optional(),
    conductorSide: side('The side the conductors lie on, looking along increasing distance, slot down'),
    feed: feedSchema,
    end: z
      .strictObject({
        reachMm: distanceMm('The last leg is covered at least this far, mm'),
        hardStopMm: distanceMm('and at most this far, mm'),
      })
      .describe('What the last leg may be covered to, measured like its length; exactly its length when absent')
      .optional(),
    legs: z.array(legSchema).min(1).max(200).describe('The straight legs in order from the feed'),
    crossings: z.array(crossingSchema).max(500).describe('Walls and floors that the run passes').optional(),
    noJoint: z.array(zoneSchema).max(500).describe('Where no joint may stand').optional(),
    noSupport: z.array(zoneSchema).max(500).describe('Where no support may stand').optional(),
    structure: structureSchema.optional(),
    dropMm: clearanceMm('Rod to buy for each support, mm').optional(),
    rod: z.enum(RODS).describe('Diameter of the hanger rod').optional(),
    rodStockMm: sizeMm('Length that rod is bought in, mm; 3048 when absent').optional(),
    attachment: z
      .enum(['anchor', 'beam-clamp', 'trapeze', 'strut'])
      .describe('How a support is held to the structure')
      .optional(),
    supportCapacityKg: weightKg('What one support may carry, kg').optional(),
    taps: z.array(tapSchema).max(5_000).describe('The tap-offs of the run').optional(),
    fieldHold: fieldHoldSchema.optional(),
  })
  .meta({ id: 'Run', description: 'A run of busway from its feed to its end' });

export type RunDocument = z.infer<typeof runSchema>;
export type LegDocument = z.infer<typeof legSchema>;
