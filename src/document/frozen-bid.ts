import { z } from 'zod';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { Figures } from '../domain/figures.ts';
import type { JobDocument } from './job-document.ts';

const amount = z.number().int();

const priced = z.object({
  type: z.string(),
  item: z.string(),
  detail: z.string().nullable(),
  quantity: z.number(),
  price: amount.nullable(),
  amount: amount.nullable(),
});

/** What is kept of the figures of a frozen bid: enough to read it, and to lay another beside it line by line. */
export const frozenFiguresSchema = z.object({
  lines: z.array(z.object({ line: z.string(), label: z.string().optional(), amount, working: z.unknown() })),
  cost: amount,
  price: amount,
  incomplete: z.array(z.string()),
  materials: z.array(priced),
  hours: z
    .object({ likely: z.number(), p10: z.number(), p50: z.number(), p80: z.number(), p90: z.number() })
    .nullable(),
  byActivity: z.array(z.object({ activity: z.string(), hours: z.number() })),
  byLevel: z.array(z.object({ level: z.string(), hours: z.number() })),
  labourBook: z.string().nullable(),
  // Only a bid that has them keeps them: an older one must stay what its hash was taken over.
  spares: z.array(priced).optional(),
  alternates: z.array(z.object({ name: z.string(), kind: z.string(), amount: amount.nullable() })).optional(),
  unitPrices: z
    .object({
      lines: z.array(
        z.object({
          item: z.string(),
          unit: z.string(),
          quantity: z.number(),
          price: amount.nullable(),
          extended: amount.nullable(),
        }),
      ),
      remainder: amount,
    })
    .optional(),
  quotes: z
    .array(
      z.object({
        package: z.string(),
        id: z.string(),
        supplier: z.string(),
        levelled: amount,
        chosen: z.boolean(),
        missing: z.array(z.string()),
      }),
    )
    .optional(),
});
export type FrozenFigures = z.infer<typeof frozenFiguresSchema>;

export const frozenBidSchema = z.object({
  id: z.string(),
  name: z.string(),
  madeBy: z.string(),
  madeAt: z.iso.datetime(),
  price: z.number().int(),
  hash: z.string().describe('SHA-256 of the inputs and figures'),
});
export type FrozenBid = z.infer<typeof frozenBidSchema>;

export const frozenBidWholeSchema = frozenBidSchema.extend({
  sound: z.boolean().describe('Whether inputs and figures still have the hash they were frozen with'),
  figures: frozenFiguresSchema,
});
export type FrozenBidWhole = z.infer<typeof frozenBidWholeSchema>;

/** The figures of a bid as they are frozen; null where the job has no bid to freeze. */
export function frozenFigures(document: JobDocument, { bid, labour }: Figures): FrozenFigures | null {
  if (bid === null) return null;
  const range = labour?.range ?? null;
  return frozenFiguresSchema.parse({
    lines: bid.lines.map(({ label, ...line }) => (label === null ? line : { ...line, label })),
    cost: bid.cost,
    price: bid.price,
    incomplete: bid.incomplete,
    materials: bid.materials,
    ...frozenOffer(bid),
    hours: range,
    byActivity: labour?.byActivity ?? [],
    byLevel: labour?.byLevel ?? [],
    labourBook: document.labourBook?.version ?? null,
  });
}

function frozenOffer({ spares, alternates, unitPrices, packages }: NonNullable<Figures['bid']>) {
  return {
    ...(spares.length > 0 && { spares }),
    ...(alternates.length > 0 && {
      alternates: alternates.map(({ entry: { name, kind }, amount: sum }) => ({ name, kind, amount: sum })),
    }),
    ...(unitPrices !== null && {
      unitPrices: {
        ...unitPrices,
        lines: unitPrices.lines.map(({ worked, offered, ...line }) => ({ ...line, price: offered ?? worked })),
      },
    }),
    ...(packages.length > 0 && {
      quotes: packages.flatMap(({ name, quotes }) =>
        quotes.map(({ quote: { id, supplier, chosen }, total, missing }) => ({
          package: name,
          id,
          supplier,
          levelled: total,
          chosen,
          missing,
        })),
      ),
    }),
  };
}

/** What the hash of a frozen bid is taken over: inputs and figures, in one order of keys. */
export function frozenText(document: unknown, figures: FrozenFigures): string {
  return canonicalJson({ document, figures });
}
