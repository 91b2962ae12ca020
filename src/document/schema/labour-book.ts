import { z } from 'zod';
import { amperes, clearanceMm, label, MAX_MINOR, name, percent, sizeMm } from './fields.ts';

const hours = (what: string) => z.number().min(0).max(10_000).describe(what);
const threePoints = {
  low: hours('Hours per unit when all goes well'),
  likely: hours('Hours per unit as a rule'),
  high: hours('Hours per unit when it goes badly'),
};

export const labourActivitySchema = z
  .strictObject({
    unit: name('What one is counted in, such as each or 100 ft'),
    ...threePoints,
    bands: z
      .array(
        z.strictObject({
          upToA: amperes('For busway of a rated current up to this, A').optional(),
          upToMm: sizeMm('For pieces up to this length, mm').optional(),
          ...threePoints,
        }),
      )
      .max(200)
      .describe('Hours by the rated current of the busway, the length of the piece, or both')
      .optional(),
    factors: z
      .array(z.enum(['height', 'congestion', 'storey', 'live']))
      .max(4)
      .describe('Conditions that apply; none when absent')
      .optional(),
  })
  .meta({ id: 'LabourActivity', description: 'Base hours of one activity, at three points' });

const crewMemberSchema = z.strictObject({
  role: name('The role'),
  number: z.number().gt(0).max(1_000).describe('How many'),
  ratePerHour: z.number().int().min(0).max(MAX_MINOR).describe('Paid rate per hour, in whole minor units'),
  effectiveness: z.number().min(0).max(2).describe('Productive part of an hour; a working foreman may be 0.5'),
  burdenPercent: z
    .number()
    .min(0)
    .max(500)
    .describe('Taxes, insurance and benefits on all that is paid, %; 0 when absent')
    .optional(),
});

const overtimeSchema = z
  .strictObject({
    hoursPerWeek: z.number().gt(0).max(168).describe('Hours that the crew works in a week'),
    straightHours: z.number().gt(0).max(168).describe('Of these at the straight rate; 40 when absent').optional(),
    premium: z
      .number()
      .min(1)
      .max(5)
      .describe('What an hour beyond them is paid, times the rate; 1.5 when absent')
      .optional(),
    productivity: z
      .number()
      .gt(0)
      .max(1)
      .describe('Part of an hour’s work that is done in such a week; 1 when absent')
      .optional(),
  })
  .describe('Scheduled overtime of the crew; none when absent');

const nonProductiveDaySchema = z
  .strictObject({
    lostHours: z
      .number()
      .gt(0)
      .max(24)
      .describe('Hours of a working day that nobody works: briefing, waiting, cleaning'),
    dayHours: z.number().gt(0).max(24).describe('Hours of a working day'),
  })
  .describe('Non-working time by the day, in place of nonProductivePercent: never both');

export const labourBookSchema = z
  .strictObject({
    version: name('Version of the labour book'),
    policy: z.enum(['add', 'compound']).describe('Whether condition factors add or compound: a choice of the company'),
    activities: z.record(label('An activity'), labourActivitySchema).describe('Base hours by activity'),
    factors: z
      .strictObject({
        height: z
          .array(z.strictObject({ overMm: clearanceMm('Above this height, mm'), percent: percent('Added hours, %') }))
          .max(50)
          .describe('Added hours by mounting height')
          .optional(),
        congestion: z
          .strictObject({ open: percent('%'), normal: percent('%'), tight: percent('%') })
          .describe('Added hours by how crowded the ceiling is, %')
          .optional(),
        storeyPercentEach: percent('Added hours for each storey above grade, %').optional(),
        livePercent: percent('Added hours beside equipment in service, %').optional(),
      })
      .optional(),
    jobConditions: z
      .array(
        z.strictObject({
          name: label('What it is, such as night shift'),
          percent: z.number().min(-90).max(1_000).describe('Added hours, %; below 0 where work goes quicker'),
          activities: z
            .array(label('An activity'))
            .max(200)
            .describe('Those that feel it; when absent all that feel any condition of a level')
            .optional(),
        }),
      )
      .max(50)
      .describe('Conditions of the whole job: shift and weekly hours, weather, temporary power, experience of the crew')
      .optional(),
    learning: z
      .strictObject({
        rate: z.number().gt(0).max(1).describe('Learning rate: 0.95 means 5 % less at each doubling'),
        referenceRepeat: z.number().gt(0).max(100_000).describe('The repeat that the base hours stand for'),
        over: z.enum(['run', 'level']).describe('What repeats'),
        activities: z
          .array(label('An activity'))
          .max(200)
          .describe('The activities that are learned; when absent all but tests, their papers and the punch list')
          .optional(),
      })
      .optional(),
    nonProductivePercent: z.number().min(0).max(100).describe('Briefings, waiting, cleaning, %').optional(),
    nonProductiveDay: nonProductiveDaySchema.optional(),
    crew: z.array(crewMemberSchema).max(100).describe('Composition of the crew and its rates').optional(),
    overtime: overtimeSchema.optional(),
    correlation: z.number().min(0).max(1).describe('Correlation between activities; 0 when absent').optional(),
    trials: z.number().int().min(1).max(1_000_000).describe('Trials of the range; 10000 when absent').optional(),
    seed: z
      .number()
      .int()
      .min(-2_147_483_648)
      .max(2_147_483_647)
      .describe('Seed of the range; 1 when absent')
      .optional(),
  })
  .meta({ id: 'LabourBook', description: "The company's labour book: base hours, factors, learning and crew" });

export type LabourBookDocument = z.infer<typeof labourBookSchema>;
