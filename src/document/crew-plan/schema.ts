import { z } from 'zod';
import { LINE_ACTIVITIES } from '../../domain/labour/result.ts';

const date = z.iso.date('A date is wanted here, as 2026-05-04.');

/** How a job is manned. No money in it, so everybody who reads the job may read it. */
export const crewPlanSchema = z.strictObject({
  start: date.describe('First day of work'),
  hoursPerDay: z.number().gt(0, 'A day has more than 0 hours.').max(24, 'A day has at most 24 hours.'),
  weekdays: z
    .array(z.number().int().min(1).max(7))
    .min(1, 'Tick at least one day of the week.')
    .describe('Days of the week that are worked, 1 Monday to 7 Sunday (ISO 8601)'),
  holidays: z.array(date).max(400),
  bufferDays: z.number().int('Whole days.').min(0, 'Not below 0.').max(60, 'At most 60 days.'),
  crews: z
    .array(
      z.strictObject({
        name: z.string().trim().min(1, 'Give the crew a name.').max(60),
        heads: z.number().int('Whole people.').min(1, 'A crew has at least one head.').max(500, 'At most 500 heads.'),
        lifts: z
          .number()
          .int('Whole lifts.')
          .min(0, 'Not below 0.')
          .max(100, 'At most 100 lifts.')
          .optional()
          .describe('Lifts that the crew works from'),
        activities: z.array(z.enum(LINE_ACTIVITIES)),
      }),
    )
    .min(1, 'Enter at least one crew.')
    .max(8),
  released: z.array(z.strictObject({ level: z.string(), date })),
});
export type CrewPlanDocument = z.infer<typeof crewPlanSchema>;
