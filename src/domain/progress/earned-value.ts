/** A job, or a part of one, on a day: hours or minor units, one of them throughout. */
export interface ValueOnDay {
  /** Budget at completion. */
  readonly budget: number;
  /** Of the budget, what the plan has done by this day. */
  readonly planned: number;
  /** Of the budget, what is done. */
  readonly earned: number;
  /** What it took. */
  readonly actual: number;
}

export interface EarnedValue {
  readonly costVariance: number;
  readonly scheduleVariance: number;
  /** Earned by spent: above 1 is good. null where nothing is spent. */
  readonly costIndex: number | null;
  /** null where nothing was planned. */
  readonly scheduleIndex: number | null;
  /** Estimates at completion, which differ by what is held of the rest; null where their index says nothing yet. */
  readonly atCompletion: {
    /** The rest goes as it went. */
    readonly atIndex: number | null;
    /** The rest goes as budgeted. */
    readonly restAsBudgeted: number;
    /** The rest goes as it went, and as late. */
    readonly atBothIndices: number | null;
  };
  /** Earned by spent that the rest needs to keep the budget; null where nothing of it is left. */
  readonly indexNeeded: number | null;
}

/**
 * Earned value: variances, indices, and three estimates at completion that are never mixed.
 *
 * Source: earned-value management, common practice (EIA-748 names the same quantities; the formulas stand here from memory).
 * Example: budget 4,000, planned 3,000, earned 2,500, spent 2,800: index 0.893, at completion 4,480.
 */
export function earnedValue({ budget, planned, earned, actual }: ValueOnDay): EarnedValue {
  const costIndex = actual === 0 ? null : earned / actual;
  const scheduleIndex = planned === 0 ? null : earned / planned;
  return {
    costVariance: earned - actual,
    scheduleVariance: earned - planned,
    costIndex,
    scheduleIndex,
    atCompletion: {
      atIndex: costIndex ? budget / costIndex : null,
      restAsBudgeted: actual + budget - earned,
      atBothIndices: costIndex && scheduleIndex ? actual + (budget - earned) / (costIndex * scheduleIndex) : null,
    },
    indexNeeded: budget === actual ? null : (budget - earned) / (budget - actual),
  };
}
