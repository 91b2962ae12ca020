import { z } from 'zod';
import { table } from './table.ts';

/** What of the figures the demo shows. */
export const figuresSchema = z.object({
  runs: z.array(z.object({ id: z.string(), layout: z.object({ ok: z.boolean() }) })),
  takeoff: z.array(
    z.object({
      item: z.string(),
      kind: z.string().optional(),
      hand: z.string().nullable().optional(),
      lengthMm: z.number().optional(),
      quantity: z.number(),
      unit: z.string(),
    }),
  ),
  labour: z.object({
    hours: z.object({
      likely: z.number(),
      mean: z.number(),
      p10: z.number(),
      p50: z.number(),
      p80: z.number(),
      p90: z.number(),
    }),
    byActivity: z.array(z.object({ activity: z.string(), quantity: z.number(), hours: z.number() })),
    byLevel: z.array(z.object({ level: z.string(), hours: z.number() })),
  }),
  checks: z.array(z.object({ severity: z.enum(['stop', 'warning', 'note']) })),
});
type Figures = z.infer<typeof figuresSchema>;

export function takeoffTable({ takeoff }: Figures): string {
  const sums = new Map<string, { readonly words: readonly string[]; readonly unit: string; quantity: number }>();
  for (const { item, kind, hand, lengthMm, quantity, unit } of takeoff) {
    const words = [item, kind ?? hand ?? '', lengthMm === undefined ? '' : `${lengthMm} mm`];
    const sum = sums.get([...words, unit].join('|')) ?? { words, unit, quantity: 0 };
    sum.quantity += quantity;
    sums.set([...words, unit].join('|'), sum);
  }
  const rows = [...sums.values()].map(({ words, unit, quantity }) => [...words, quantity, unit]);
  return table(['item', 'kind', 'length', 'quantity', 'unit'], rows);
}

export function hoursTables({ labour }: Figures): string {
  const { hours, byActivity, byLevel } = labour;
  const activities = byActivity.map((one) => [one.activity, one.quantity, one.hours] as const);
  const levels = byLevel.map((one) => [one.level, one.hours] as const);
  const range = [hours.likely, hours.mean, hours.p10, hours.p50, hours.p80, hours.p90];
  return [
    table(['activity', 'quantity', 'hours'], activities),
    table(['level', 'hours'], levels),
    table(['likely', 'mean', 'P10', 'P50', 'P80', 'P90'], [range]),
  ].join('\n\n');
}
