import { z } from 'zod';
import { name, percent, text } from './fields.ts';
import { orderingSchema } from './ordering.ts';

export const projectSchema = z
  .strictObject({
    number: name('The job number'),
    name: name('What the job is called'),
    client: text('Who the work is for').optional(),
    site: text('Where the work is').optional(),
    units: z.enum(['ft-in', 'metric']).describe('How lengths are shown and how a bare number is read'),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .describe('ISO 4217 code of the currency, such as USD'),
    timeZone: text('IANA time zone of the site, such as America/Chicago').optional(),
    codeBasis: z.enum(['NEC', 'IEC']).describe('Which family of rules the checks quote'),
    codeEdition: text('Edition of the code in force at the site, such as 2023').optional(),
    industrial: z
      .boolean()
      .describe('An industrial establishment in the sense of the reduced-busway exception')
      .optional(),
    frequencyHz: z.number().gt(0).max(1_000).describe('Nominal frequency, Hz'),
    voltageLL: z.number().gt(0).max(100_000).describe('Nominal voltage line to line, V'),
    voltageLN: z.number().gt(0).max(100_000).describe('Nominal voltage line to neutral, V'),
    voltageDropLimitPercent: percent("The project's own limit of voltage drop, %; 3 when absent").optional(),
    unbalanceLimitPercent: percent("The project's own limit of unbalance at the feed, %; 10 when absent").optional(),
    ordering: orderingSchema.optional(),
  })
  .meta({ id: 'Project', description: 'The project: its units, currency, code basis and nominal voltage' });

export type ProjectDocument = z.infer<typeof projectSchema>;
