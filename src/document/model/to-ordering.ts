import type { Ordering } from '../../domain/ordering/ordering.ts';
import { fromMm } from '../../domain/units/length.ts';
import type { OrderingDocument } from '../schema/ordering.ts';
import { lengthOrNull } from './to-length.ts';

/** The job's rules for ordering; a rule that is left open fits everything, and what is not stated stays unstated. */
export function toOrdering(ordering: OrderingDocument): Ordering {
  const { closure } = ordering;
  return {
    spares: (ordering.spares ?? []).map((rule) => ({
      item: rule.item,
      type: rule.type ?? null,
      kind: rule.kind ?? null,
      hand: rule.hand ?? null,
      length: lengthOrNull(rule.lengthMm),
      wastePercent: rule.wastePercent ?? 0,
      percent: rule.percent ?? 0,
      minimum: rule.minimum ?? 0,
      ownerSpares: rule.ownerSpares ?? 0,
    })),
    leadDays: new Map((ordering.leadDays ?? []).map(({ item, days }) => [item, days])),
    plan: ordering.plan ?? 'continuous',
    cordStock: [...new Set((ordering.cordStockMm ?? []).map(fromMm))].sort((a, b) => a - b),
    closure: closure === undefined ? null : { stock: fromMm(closure.stockMm), wastePercent: closure.wastePercent ?? 0 },
    washersPerRod: ordering.washersPerRod ?? null,
    braceEverySupports: ordering.braceEverySupports ?? null,
    tools:
      ordering.tools?.map((tool) => ({
        tool: tool.tool,
        perCrew: tool.perCrew,
        activity: tool.activity ?? null,
        crews: tool.crews ?? null,
        note: tool.note ?? null,
      })) ?? null,
  };
}
