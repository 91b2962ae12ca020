import { z } from 'zod';
import { toMm } from '../../domain/units/length.ts';
import type { Beside } from './beside.ts';

const minor = z.number().int().nullable();

/** What a job comes to, as the API says it. Money: office only. */
export const totalsSchema = z.object({
  hours: z
    .object({ likely: z.number(), mean: z.number(), p50: z.number(), p80: z.number() })
    .nullable()
    .describe('Labour hours; null without a labour book'),
  costPerProductiveHour: z.number().nullable(),
  labour: minor.describe('Likely hours at the cost of a productive hour'),
  material: z.number().int().describe('Of the bid, or else the takeoff at the prices of its types'),
  unpriced: z.number().int().describe('Kinds of things without a price: they count nothing'),
  cost: minor,
  price: minor,
  incomplete: z.boolean(),
  finish: z.object({ steady: z.string(), earliest: z.string() }).nullable().describe('Last days of the crew plan'),
  leftOut: z.array(z.string()).describe('Runs that no sections can be laid for'),
  byActivity: z.array(z.object({ activity: z.string(), hours: z.number() })),
  byLevel: z.array(z.object({ level: z.string(), hours: z.number() })),
});

export const besideSchema = z.object({
  base: totalsSchema,
  changed: totalsSchema,
  things: z
    .array(
      z.object({
        thing: z.object({
          item: z.string(),
          kind: z.string().nullable(),
          hand: z.string().nullable(),
          lengthMm: z.number().nullable(),
          type: z.string().nullable(),
          unit: z.string(),
        }),
        before: z.number(),
        after: z.number(),
      }),
    )
    .describe('What the takeoff of the whole job holds in another number'),
});

/** Two ways of doing a job in the words of the API: lengths in mm. */
export function printBeside({ base, changed, things }: Beside): z.infer<typeof besideSchema> {
  return z.parse(besideSchema, {
    base,
    changed,
    things: things.map(({ thing: { length, ...thing }, ...numbers }) => ({
      thing: { ...thing, lengthMm: length === null ? null : toMm(length) },
      ...numbers,
    })),
  });
}
