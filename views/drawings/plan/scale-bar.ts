import type { UnitSystem } from '../../../src/domain/model.ts';
import { FOOT, type Length, METRE } from '../../../src/domain/units/length.ts';

const ROUND = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/** The longest round length of the job's unit that is no longer than `most`, and how it is written. */
export function scaleBar(most: Length, units: UnitSystem): { readonly length: Length; readonly text: string } {
  const unit = units === 'ft-in' ? FOOT : METRE;
  const count = ROUND.findLast((round) => round * unit <= most) ?? 1;
  return { length: count * unit, text: `${count} ${units === 'ft-in' ? 'ft' : 'm'}` };
}
