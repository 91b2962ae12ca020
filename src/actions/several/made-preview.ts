import { z } from 'zod';
import type { JobDocument } from '../../document/job-document.ts';
import type { MadeRun, SeveralPlan } from '../../document/several/plan.ts';
import type { Finding } from '../../domain/finding.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import { toMm } from '../../domain/units/length.ts';
import { checked, layOut } from '../designs.ts';
import { faceOffsOfMade } from '../face-offs.ts';
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

/**
 * The made runs laid out as they would be, checked by the rules of the document. `around` holds what else hangs on their
 * levels, for the room between runs that face each other.
 */
export function madePreview(after: JobDocument, { made, notes }: Sound, around: JobDocument): MadePreview {
  const layouts = layOut(checked(after, { faultPath: madeFaultPath }));
  const across = faceOffsOfMade(
    after,
    around,
    made.map(({ run }) => run.id),
  );
  return { rows: made.map((one) => rowOf(one, layouts, across)), layouts, notes };
}

/** A fault of a made run's document as the field that it follows from. */
export function madeFaultPath(path: string): string {
  if (/^runs\[\d+\]\.(id|pairedRun)$/.test(path)) return 'names';
  if (/^runs\[\d+\]\.feed\.supply$/.test(path)) return 'supply';
  return path.startsWith('runs[') ? 'runs' : path;
}

function rowOf({ run, from }: MadeRun, layouts: ReadonlyMap<string, RunLayout>, across: readonly Finding[]): MadeRow {
  const layout = layouts.get(run.id);
  const findings = [...(layout?.findings ?? []), ...across.filter((finding) => finding.run === run.id)];
  return {
    id: run.id,
    from,
    level: run.level,
    side: run.side ?? null,
    supply: run.feed.supply ?? null,
    taps: run.taps?.length ?? 0,
    lengthMm: toMm(layout?.length ?? 0),
    layoutOk: layout?.ok ?? false,
    stops: findings.filter((finding) => finding.severity === 'stop').length,
  };
}
