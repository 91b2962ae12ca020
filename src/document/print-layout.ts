import { z } from 'zod';
import type { RunLayout } from '../domain/layout/result.ts';
import { toMm } from '../domain/units/length.ts';

const KILOGRAMS = 1000;

/** A run's layout as figures and the API show it: millimetres, kilograms to the gram. */
export const printedLayoutSchema = z.object({
  ok: z.boolean(),
  incomplete: z.literal(true).optional(),
  sections: z.array(
    z.object({
      fromMm: z.number(),
      toMm: z.number(),
      kind: z.enum(['stock', 'cut', 'elbow', 'tee']),
      hand: z.string().nullable(),
    }),
  ),
  joints: z.array(z.object({ atMm: z.number() })),
  supports: z.array(z.object({ atMm: z.number(), loadKg: z.number(), continuousLoadKg: z.number() })),
  facing: z.array(z.object({ leg: z.number().int(), compassDeg: z.number(), relative: z.enum(['left', 'right']) })),
});
export type PrintedLayout = z.infer<typeof printedLayoutSchema>;

/** Empty lists and `incomplete` where a stop bars the layout. */
export function printLayout(layout: RunLayout): PrintedLayout {
  if (!layout.ok) return { ok: false, incomplete: true, sections: [], joints: [], supports: [], facing: [] };
  return {
    ok: true,
    sections: layout.pieces.map(({ from, to, kind, hand }) => ({ fromMm: toMm(from), toMm: toMm(to), kind, hand })),
    joints: layout.joints.map(({ at }) => ({ atMm: toMm(at) })),
    supports: layout.supports.map(({ at, loadKg, continuousLoadKg }) => ({
      atMm: toMm(at),
      loadKg: grams(loadKg),
      continuousLoadKg: grams(continuousLoadKg),
    })),
    facing: layout.facing.map(({ leg, compassDeg, relative }) => ({ leg, compassDeg, relative })),
  };
}

function grams(kilograms: number): number {
  if (!Number.isFinite(kilograms)) throw new Error(`a load came out as ${kilograms}`);
  return Math.round(kilograms * KILOGRAMS) / KILOGRAMS;
}
