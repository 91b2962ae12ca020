import type { UnitSystem } from '../../../src/domain/model.ts';

export interface Scale {
  /** 1:`ratio`. */
  readonly ratio: number;
  readonly word: string;
}

/**
 * The usual series, largest drawing first. Feet and inches: the architect's scales (1" = 1'-0" is 1:12, 1/8" = 1'-0" is 1:96)
 * and the engineer's (1" = 20' is 1:240): 12 × feet to the inch of paper. Metric: ISO 5455 with 1:25 and 1:250 between. From memory;
 * the arithmetic is that of the words themselves.
 */
const SERIES: Readonly<Record<UnitSystem, readonly Scale[]>> = {
  'ft-in': [
    ...[
      ['1', 12],
      ['3/4', 16],
      ['1/2', 24],
      ['3/8', 32],
      ['1/4', 48],
      ['3/16', 64],
      ['1/8', 96],
      ['3/32', 128],
      ['1/16', 192],
    ].map(([inch, ratio]) => ({ ratio: Number(ratio), word: `${inch}" = 1'-0"` })),
    ...[20, 30, 40, 50, 60, 100].map((feet) => ({ ratio: feet * 12, word: `1" = ${feet}'` })),
  ],
  metric: [10, 20, 25, 50, 100, 200, 250, 500, 1000].map((ratio) => ({ ratio, word: `1:${ratio}` })),
};

/** The smallest drawings that are chosen without a person's asking, so that marks stay where they belong. */
const SMALLEST_STRIP: Readonly<Record<UnitSystem, number>> = { 'ft-in': 96, metric: 100 };
const SMALLEST_PLAN: Readonly<Record<UnitSystem, number>> = { 'ft-in': 240, metric: 250 };

export function scalesOf(units: UnitSystem): readonly Scale[] {
  return SERIES[units];
}

export function smallestOf(drawing: 'strip' | 'plan', units: UnitSystem): number {
  return (drawing === 'strip' ? SMALLEST_STRIP : SMALLEST_PLAN)[units];
}

/** `scaleWord(96, 'ft-in') = '1/8" = 1\'-0"'`. */
export function scaleWord(ratio: number, units: UnitSystem): string {
  return SERIES[units].find((scale) => scale.ratio === ratio)?.word ?? `1:${ratio}`;
}
