import type { EstimateClass } from './bid-entries.ts';

export interface EstimateClassFacts {
  readonly maturity: string;
  readonly use: string;
  /** Usual accuracy, from and to, in percent of the estimate. */
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

/**
 * What an estimate of a class rests on and how far it usually misses, for buildings.
 *
 * Source: AACE International 56R-08, table 1; the values are from memory and to be checked with the practice itself.
 * Example: `ESTIMATE_CLASSES[2].high` is [5, 15]: the cost usually ends at most 5 to 15 % above.
 */
export const ESTIMATE_CLASSES: Readonly<Record<EstimateClass, EstimateClassFacts>> = {
  5: { maturity: '0 to 2 %', use: 'area or assembly figures, screening', low: [-30, -20], high: [30, 50] },
  4: { maturity: '1 to 15 %', use: 'schematic design', low: [-20, -10], high: [20, 30] },
  3: { maturity: '10 to 40 %', use: 'design development, budget', low: [-15, -5], high: [10, 20] },
  2: { maturity: '30 to 75 %', use: 'control, bid or tender', low: [-10, -5], high: [5, 15] },
  1: { maturity: '65 to 100 %', use: 'check estimate, bid or tender', low: [-5, -3], high: [3, 10] },
};
