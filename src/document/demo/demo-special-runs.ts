import type { RunDocument } from '../schema/run.ts';
import { type DemoPlace, demoHangers, demoRunBase, demoRunId } from './demo-run.ts';
import { demoTaps } from './demo-taps.ts';
import { feet } from './feet.ts';

export const L_RUN: DemoPlace = { floor: 3, row: 6, side: 'A' };
export const TEE_RUN: DemoPlace = { floor: 1, row: 6, side: 'A' };
export const BRANCH_ID = 'F1-R06-A-BR';

const L_RUN_TAPS_FT = [
  1.75, 5.25, 8.75, 12.25, 15.75, 18.75, 22.75, 26.25, 28.75, 33.25, 36.75, 40.25, 43.75, 47.25, 51.25, 54.25, 57.75,
  63.5, 67, 70.5,
];
const TEE_RUN_TAPS_FT = [
  1.75, 5.25, 8.75, 12.25, 15.75, 18.75, 22.75, 26.25, 29.75, 33.25, 36.75, 38.75, 43.75, 47.25, 50.75, 54.25, 57.75,
  60.75, 64.75, 68.25,
];
const BRANCH_TAPS_FT = [1.75, 5.25, 8.75, 12.25, 15.75, 18.75, 22.75, 26.25];

/** The demo's run round a corner: through a fire wall, under a duct that leaves no room for a rod, then north. */
export function demoLRun(): RunDocument {
  return {
    ...demoRunBase(L_RUN),
    pairedRun: demoRunId({ ...L_RUN, side: 'B' }),
    legs: [
      { lengthMm: feet(61), turn: 'left' },
      { lengthMm: feet(34), turn: 'none' },
    ],
    end: { reachMm: feet(32), hardStopMm: feet(36.5) },
    crossings: [{ atMm: feet(39), thicknessMm: feet(1), kind: 'fire-wall', fireRatingMin: 120 }],
    noSupport: [{ fromMm: feet(43), toMm: feet(47), reason: 'Duct under the deck' }],
    taps: demoTaps(L_RUN, L_RUN_TAPS_FT, { paired: true }),
  };
}

/** The demo's run with a tee, and its branch: single-corded equipment, so neither has a pair. */
export function demoTeeRuns(): RunDocument[] {
  const parent: RunDocument = {
    ...demoRunBase(TEE_RUN),
    legs: [{ lengthMm: feet(72), turn: 'none' }],
    taps: demoTaps(TEE_RUN, TEE_RUN_TAPS_FT, { paired: false }),
  };
  const branch: RunDocument = {
    id: BRANCH_ID,
    level: parent.level,
    area: parent.area,
    type: parent.type,
    side: 'A',
    conductorSide: 'right',
    feed: { kind: 'tee', fromRun: parent.id, atMm: feet(41), branchSide: 'left' },
    legs: [{ lengthMm: feet(31), turn: 'none' }],
    ...demoHangers(),
    taps: demoTaps({ ...TEE_RUN, row: 7 }, BRANCH_TAPS_FT, { paired: false }),
  };
  return [parent, branch];
}
