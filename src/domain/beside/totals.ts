import { priceTakeoff } from '../bid/price-takeoff.ts';
import type { Figures } from '../figures.ts';
import type { Activity } from '../labour/result.ts';
import type { Job } from '../model.ts';
import { type CrewPlan, planCrews } from '../schedule/plan-crews.ts';

/** What a job comes to, in the figures that two ways of doing it are compared by. Amounts in minor units: money, office only. */
export interface Totals {
  /** Labour hours; null without a labour book. */
  readonly hours: { readonly likely: number; readonly mean: number; readonly p50: number; readonly p80: number } | null;
  readonly costPerProductiveHour: number | null;
  /** Likely hours at the cost of a productive hour, rounded once; null without either. */
  readonly labour: number | null;
  /** Material: the bid's own line, or else the takeoff at the prices of its types. */
  readonly material: number;
  /** How many kinds of things have no price and count nothing in the material. */
  readonly unpriced: number;
  /** null without entries for a bid. */
  readonly cost: number | null;
  readonly price: number | null;
  /** True where the bid says what its price lacks. */
  readonly incomplete: boolean;
  /** The last day of both ways of working; null without a crew plan or hours. */
  readonly finish: { readonly steady: string; readonly earliest: string } | null;
  /** Runs that no sections can be laid for: they count nowhere. */
  readonly leftOut: readonly string[];
  readonly byActivity: readonly { readonly activity: Activity | 'extra'; readonly hours: number }[];
  readonly byLevel: readonly { readonly level: string; readonly hours: number }[];
}

/** A job's totals. Example: 1,938 likely hours at 102.15 are 197,966.70 of labour. */
export function totalsOf(job: Job, figures: Figures, plan: CrewPlan | null): Totals {
  const { labour, bid, layouts, takeoff } = figures;
  const cost = labour?.costPerProductiveHour ?? null;
  const priced =
    bid === null || bid.materials.length > 0 ? (bid?.materials ?? priceTakeoff(job, layouts, takeoff)) : [];
  const own = bid?.lines.find(({ line }) => line === 'materials')?.amount;
  return {
    hours: labour === null ? null : pick(labour.range),
    costPerProductiveHour: cost,
    labour: labour === null || cost === null ? null : Math.round(labour.range.likely * cost),
    material: own ?? priced.reduce((sum, { amount }) => sum + (amount ?? 0), 0),
    unpriced: priced.filter(({ amount }) => amount === null).length,
    cost: bid?.cost ?? null,
    price: bid?.price ?? null,
    incomplete: (bid?.incomplete.length ?? 0) > 0,
    finish: labour === null || plan === null ? null : finishOf(job, plan, labour.lines),
    leftOut: layouts.filter((layout) => !layout.ok).map((layout) => layout.run),
    byActivity: labour?.byActivity ?? [],
    byLevel: labour?.byLevel ?? [],
  };
}

function pick({ likely, mean, p50, p80 }: NonNullable<Totals['hours']>): NonNullable<Totals['hours']> {
  return { likely, mean, p50, p80 };
}

function finishOf(
  job: Job,
  plan: CrewPlan,
  lines: NonNullable<Figures['labour']>['lines'],
): { readonly steady: string; readonly earliest: string } {
  const { dates, continuous, earliest } = planCrews(plan, job.levels, lines);
  const dayOf = (days: number) => dates[Math.max(0, Math.ceil(days) - 1)] ?? plan.start;
  return { steady: dayOf(continuous.finish), earliest: dayOf(earliest.finish) };
}
