import { z } from 'zod';
import type { Gap } from '../../domain/closeout/gap.ts';
import { type Readiness, ROWS } from '../../domain/closeout/readiness.ts';
import { gapWords, ROW_WORDS } from '../../domain/closeout/words.ts';
import { listOf, pageQuerySchema } from '../paging.ts';

const counts = {
  required: z.number().int().describe('Pieces of evidence that the closeout asks for.'),
  present: z.number().int(),
  percent: z.number().int().nullable().describe('Present of required, rounded down; null where none is asked.'),
};

export const gapViewSchema = z.object({
  row: z.enum(ROWS),
  run: z.string().nullable().describe('The run by its key; null for what belongs to the whole job.'),
  runId: z.string().nullable(),
  subject: z.enum(['run', 'piece', 'joint', 'support', 'tap', 'test', 'type']),
  id: z.string().describe('Permanent id of the subject; of its run while that was never released.'),
  mark: z.string(),
  reason: z.string().describe('Stable code.'),
  words: z.string(),
  count: z.number().int(),
});

export const readinessViewSchema = z.object({
  ...counts,
  runs: z.number().int(),
  rows: z.array(z.object({ row: z.enum(ROWS), title: z.string(), asks: z.string(), ...counts })),
  gaps: listOf(gapViewSchema).describe('What is missing, by run and along each run.'),
});
export type ReadinessView = z.infer<typeof readinessViewSchema>;

export const readinessQuerySchema = pageQuerySchema.extend({
  row: z.enum(ROWS).optional().describe('Gaps of this row alone.'),
});

/** The rows whole, and a page of the gaps. */
export function readinessView(
  { rows, gaps, ...sums }: Readiness,
  { row, page, limit }: z.infer<typeof readinessQuerySchema>,
): ReadinessView {
  const asked = row === undefined ? gaps : gaps.filter((gap) => gap.row === row);
  const items = asked.slice((page - 1) * limit, page * limit).map(gapView);
  return {
    ...sums,
    rows: rows.map((counted) => ({ ...ROW_WORDS[counted.row], ...counted })),
    gaps: { items, total: asked.length, page, limit },
  };
}

function gapView(gap: Gap): ReadinessView['gaps']['items'][number] {
  return { ...gap, words: gapWords(gap.reason) };
}
