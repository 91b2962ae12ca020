import { describe, expect, it } from 'vitest';
import { type CutPieces, planCuts } from '../../../src/domain/takeoff/cutting-plan.ts';
import { rodPlanWords } from '../../../views/words/rod-plan.ts';
import { feet } from '../../support/job.ts';

const said = (pieces: readonly CutPieces[]) => rodPlanWords({ rod: '3/8', plan: planCuts(feet(10), pieces) }, 'ft-in');

// The job map's bad entry 14: rods counted from their total length. 12 × 6.75 ft = 81 ft is 8.1 sticks, so 9 by total; but one
// rod alone comes out of each stick, and 3.25 ft of it is left: 12 sticks, 39 ft over.
describe('what the cutting plan of rods says', () => {
  it('14: twelve rods of 6.75 ft need twelve sticks of 10 ft, not nine', () => {
    expect(said([{ length: feet(6.75), count: 12 }])).toBe(
      `3/8: 12 sticks, no fewer will do; 39'-0" left over, the saw’s cut not counted. ` +
        `12 rods of 6'-9" need 12 sticks of 10'-0", not the 9 that their total length would give.`,
    );
  });

  it('says nothing of the total where it buys enough: two rods of 5 ft come out of a stick', () => {
    expect(said([{ length: feet(5), count: 11 }])).toBe(
      `3/8: 6 sticks, no fewer will do; 5'-0" left over, the saw’s cut not counted.`,
    );
  });

  it('counts rods of several lengths together: 6 and 7 ft never share a stick, though 39 ft is less than four', () => {
    expect(
      said([
        { length: feet(6), count: 3 },
        { length: feet(7), count: 3 },
      ]),
    ).toContain(`6 rods need 6 sticks of 10'-0", not the 4 that their total length would give.`);
  });
});
