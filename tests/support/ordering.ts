import type { LabourLine } from '../../src/domain/labour/result.ts';
import type { Level } from '../../src/domain/model.ts';
import type { Manning } from '../../src/domain/ordering/need-dates.ts';
import type { Ordering, SpareRule } from '../../src/domain/ordering/ordering.ts';
import { type CrewPlan, planCrews } from '../../src/domain/schedule/plan-crews.ts';

/** A job's rules for ordering with nothing stated. */
export function anOrdering(changes: Partial<Ordering> = {}): Ordering {
  return {
    spares: [],
    leadDays: new Map(),
    plan: 'continuous',
    cordStock: [],
    closure: null,
    washersPerRod: null,
    braceEverySupports: null,
    tools: null,
    ...changes,
  };
}

export function aSpareRule(item: SpareRule['item'], changes: Partial<SpareRule> = {}): SpareRule {
  return {
    item,
    type: null,
    kind: null,
    hand: null,
    length: null,
    wastePercent: 0,
    percent: 0,
    minimum: 0,
    ownerSpares: 0,
    ...changes,
  };
}

/** Two crews of two heads from Monday 2026-05-04, the Wednesday a holiday; invented. */
export const TWO_CREWS: CrewPlan = {
  start: '2026-05-04',
  hoursPerDay: 8,
  calendar: { weekdays: [1, 2, 3, 4, 5], holidays: ['2026-05-06'] },
  bufferDays: 0,
  crews: [
    { name: 'Hangers', heads: 2, activities: ['support'] },
    { name: 'Sections', heads: 2, activities: ['handle-section', 'section', 'joint'] },
  ],
  released: [],
};

/**
 * 32 h of hangers (2 days) and 48 h of sections (3 days) on each level. By hand, no crew standing: hangers on days 0 and 2,
 * sections on days 2 and 5; day 2 is Thursday the 7th, day 5 Tuesday the 12th.
 */
export function manned(levels: readonly Level[]): Manning {
  const lines = levels.flatMap(({ id }) => [hours(id, 'support', 32), hours(id, 'section', 48)]);
  return { plan: TWO_CREWS, schedule: planCrews(TWO_CREWS, levels, lines) };
}

function hours(level: string, activity: LabourLine['activity'], total: number): LabourLine {
  return {
    activity,
    note: null,
    run: null,
    level,
    length: null,
    pieces: 1,
    quantity: 1,
    unit: 'each',
    base: { low: total, likely: total, high: total },
    factors: [],
    conditionFactor: 1,
    repeat: null,
    learningFactor: 1,
    nonProductiveFactor: 1,
    hours: total,
  };
}
