import type { FactorName, LabourActivity, LabourBook, Level } from '../model.ts';

export interface ConditionFactor {
  readonly factors: readonly { readonly name: string; readonly percent: number }[];
  readonly factor: number;
}

/**
 * How the conditions of the level and of the job stretch the hours of one activity. Only the factors that the activity names apply, and the
 * book's policy says whether their percentages add up or compound: 1.2 x 1.25 x 1.3 x 1.1 is 2.15, and added 1.85.
 * A height percentage counts strictly above its height, the highest one passed; an unknown mounting height adds nothing.
 */
export function conditionFactor(activity: LabourActivity, level: Level, book: LabourBook): ConditionFactor {
  const names = [...new Set(activity.factors)];
  const factors = [
    ...names.map((name) => ({ name, percent: percentOf(name, level, book) })),
    ...book.jobConditions
      .filter(({ activities }) => activities?.includes(activity.id) ?? names.length > 0)
      .map(({ name, percent }) => ({ name, percent })),
  ];
  return { factors, factor: combine(factors, book.policy) };
}

function percentOf(name: FactorName, { conditions }: Level, { factors }: LabourBook): number {
  switch (name) {
    case 'height':
      return heightPercent(conditions.mountingHeight, factors.height);
    case 'congestion':
      return factors.congestion[conditions.congestion];
    case 'storey':
      return factors.storeyPercentEach * conditions.storeysAboveGrade;
    case 'live':
      return conditions.liveArea ? factors.livePercent : 0;
  }
}

function heightPercent(mountingHeight: number | null, steps: LabourBook['factors']['height']): number {
  if (mountingHeight === null) return 0;
  const passed = steps.filter((step) => mountingHeight > step.over).sort((a, b) => b.over - a.over);
  return passed[0]?.percent ?? 0;
}

function combine(factors: ConditionFactor['factors'], policy: LabourBook['policy']): number {
  if (policy === 'add') return 1 + factors.reduce((sum, { percent }) => sum + percent, 0) / 100;
  return factors.reduce((product, { percent }) => product * (1 + percent / 100), 1);
}
