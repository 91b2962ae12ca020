import { z } from 'zod';
import type { Speech } from '../../../../views/words/quality.ts';
import { openPointWords } from '../../../../views/words/run-status.ts';
import type { RunChecks, TestStanding } from '../../../actions/cards.ts';
import { reading } from '../../../document/records/insulation-record.ts';
import { INSULATION_RULES } from '../../../domain/quality/insulation/criterion.ts';
import { VERDICTS } from '../../../domain/quality/insulation/verdict.ts';
import { RUN_STATUSES } from '../../../domain/quality/run-status.ts';
import { toMm } from '../../../domain/units/length.ts';
import { cardShared, remarkTold, shared, speechOf, stampOf, stampSchema, toldSchema } from './card-parts.ts';

const pairSchema = z.object({
  pair: z.string(),
  reading: reading.describe('As written on the sheet; never changed.'),
  megohm: z.number().nullable(),
  at20Megohm: z.number().nullable(),
  comparedMegohm: z.number().nullable().describe("Held against the limit, on the rule's basis."),
  verdict: z.enum(VERDICTS),
  byFigures: z.enum(VERDICTS).describe('What the figures alone come to, also where the test is information only.'),
  note: z.string().nullable(),
  working: z.string(),
});

const testSchema = z.object({
  recordId: z.string(),
  by: z.object({ id: z.string(), name: z.string() }),
  at: z.string(),
  verdict: z.enum(VERDICTS).nullable().describe('As judged when it was recorded.'),
  stands: z.boolean().describe('False once another test replaced it.'),
  counts: z.boolean().describe('The newest that stands.'),
  stale: z.boolean().describe('Work was done after it in everything that is connected.'),
  staleBecause: z.array(z.object({ run: z.string(), mark: z.string(), kind: z.string(), at: z.string() })),
  criterion: z.string().nullable().describe('What it was held against, in words.'),
  neededMegohm: z.number().nullable(),
  sources: z.array(z.string()),
  pairs: z.array(pairSchema),
  remarks: z.array(toldSchema),
});

export const runChecksSchema = z.object({
  id: z.string(),
  version: z.number().int(),
  run: z.string(),
  lengthMm: z.number(),
  ...cardShared,
  status: z.enum(RUN_STATUSES).describe('Computed from the records. It permits nothing.'),
  open: z
    .array(z.object({ code: z.string(), count: z.number().int(), of: z.number().int(), words: z.string() }))
    .describe('What is still missing for the next status.'),
  ends: z.array(z.object({ end: z.enum(['near', 'far']), closed: stampSchema.nullable() })),
  slot: stampSchema.nullable().describe('Closing of the unused slots.'),
  reported: z.array(z.object({ activity: z.string(), quantity: z.number().int().nullable() })),
  rule: z.enum(INSULATION_RULES).nullable(),
  ruleLocked: z.boolean(),
  tests: z.array(testSchema).describe('Insulation tests, newest first; superseded ones too.'),
});

export function printRunChecks(view: RunChecks): z.infer<typeof runChecksSchema> {
  const { floor, site } = view.at;
  const { card } = site;
  return {
    id: floor.id,
    version: floor.version,
    run: floor.key,
    lengthMm: toMm(floor.layout.length),
    ...shared(view),
    status: view.state.status,
    open: view.state.open.map((point) => ({
      code: point.code,
      count: point.count,
      of: point.of,
      words: openPointWords(point),
    })),
    ends: card.ends.map(({ end, closed }) => ({ end, closed: stampOf(closed) })),
    slot: stampOf(card.slot),
    reported: [...card.reported].map(([activity, count]) => ({ activity, quantity: count === 'all' ? null : count })),
    rule: view.rule.rule,
    ruleLocked: view.rule.locked,
    tests: view.tests.map((test) => testOf(test, speechOf(view.at))),
  };
}

function testOf(
  { record, stands, counts, judged, staleBecause }: TestStanding,
  say: Speech,
): z.infer<typeof testSchema> {
  const report = judged.ok ? judged.report : null;
  return {
    recordId: record.id,
    by: record.by,
    at: record.at,
    verdict: record.outcome === 'credited' ? null : record.outcome,
    stands,
    counts,
    stale: staleBecause.length > 0,
    staleBecause: staleBecause.map(({ run, mark, kind, at }) => ({ run, mark, kind, at })),
    criterion: report?.criterion.text ?? null,
    neededMegohm: report?.criterion.neededMegohm ?? null,
    sources: [...(report?.criterion.sources ?? [])],
    pairs: (report?.pairs ?? []).map((pair) => ({ ...pair })),
    remarks: (report?.remarks ?? []).map((remark) => remarkTold(remark, say)),
  };
}
