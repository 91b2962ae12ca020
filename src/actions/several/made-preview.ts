import { z } from 'zod';
import type { JobDocument } from '../../document/job-document.ts';
import type { MadeRun, SeveralPlan } from '../../document/several/plan.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import { toMm } from '../../domain/units/length.ts';
import { checked, layOut } from '../designs.ts';
import { refuse } from '../refused.ts';

/** One run that would be made. */
export const madeRowSchema = z.object({
  id: z.string(),
  from: z.string().describe('The run that it is made from.'),
  level: z.string(),
  side: z.string().nullable(),
  supply: z.string().nullable(),
  taps: z.number().int(),
  lengthMm: z.number(),
  layoutOk: z.boolean(),
  stops: z.number().int().describe('Findings of the layout that would bar a release.'),
});
export type MadeRow = z.infer<typeof madeRowSchema>;

export interface MadePreview {
  readonly rows: readonly MadeRow[];
  readonly layouts: ReadonlyMap<string, RunLayout>;
  readonly notes: readonly string[];
}

export type Sound = Extract<SeveralPlan, { ok: true }>;

/** The plan, or the refusal of the whole with every fault beside its field. */
export function soundPlan(plan: SeveralPlan): Sound {
  return plan.ok ? plan : refuse({ code: 'invalid', faults: plan.faults });
}

/** The made runs laid out as they would be, checked by the rules of the document. */
export function madePreview(after: JobDocument, { made, notes }: Sound): MadePreview {
  const layouts = layOut(checked(after, { faultPath: madeFaultPath }));
  return { rows: made.map((one) => rowOf(one, layouts)), layouts, notes };
}

/** A fault of a made run's document as the field that it follows from. */
export function madeFaultPath(path: string): string {
  if (/^runs\[\d+\]\.(id|pairedRun)$/.test(path)) return 'names';
  if (/^runs\[\d+\]\.feed\.supply$/.test(path)) return 'supply';
  return path.startsWith('runs[') ? 'runs' : path;
}

function rowOf({ run, from }: MadeRun, layouts: ReadonlyMap<string, RunLayout>): MadeRow {
  const layout = layouts.get(run.id);
  return {
    id: run.id,
    from,
    level: run.level,
    side: run.side ?? null,
    supply: run.feed.supply ?? null,
    taps: run.taps?.length ?? 0,
    lengthMm: toMm(layout?.length ?? 0),
    layoutOk: layout?.ok ?? false,
    stops: layout?.findings.filter((finding) => finding.severity === 'stop').length ?? 0,
  };
}
