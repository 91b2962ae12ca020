import type { RunDocument } from '../schema/run.ts';
import { demoTaps } from './demo-taps.ts';
import { feet } from './feet.ts';

/** The busway's centre stands 9 ft 3 in above the floor, under a deck at 16 ft. */
export const MOUNTING_MM = feet(9.25);
export const STRUCTURE_MM = feet(16);
/** Rod from the deck to the busway. */
export const ROD_MM = feet(6.75);
const ROW_PITCH_MM = 4_800;
/** The A-side and the B-side of a row hang back to back, taps facing away from each other. */
const BACK_TO_BACK_MM = 600;

export interface DemoPlace {
  readonly floor: number;
  readonly row: number;
  readonly side: 'A' | 'B';
}

export function demoRunId({ floor, row, side }: DemoPlace): string {
  return `F${floor}-R${String(row).padStart(2, '0')}-${side}`;
}

/** Distances of the 20 taps of a standard run, ft: a pitch of 3.5 from 1.75, two of them moved clear of a joint. */
export const STANDARD_TAPS_FT = [
  1.75, 5.25, 8.75, 12.25, 15.75, 18.75, 22.75, 26.25, 29.75, 33.25, 36.75, 41.25, 43.75, 47.25, 50.75, 54.25, 57.75,
  61.25, 64.75, 68.25,
] as const;

/** A standard run of the demo: 70 ft straight, 20 taps, fed at its west end, paired with the other side of its row. */
export function demoStandardRun(place: DemoPlace): RunDocument {
  const other = place.side === 'A' ? 'B' : 'A';
  return {
    ...demoRunBase(place),
    pairedRun: demoRunId({ ...place, side: other }),
    legs: [{ lengthMm: feet(70), turn: 'none' }],
    taps: demoTaps(place, STANDARD_TAPS_FT, { paired: true }),
  };
}

/** What every run of the demo has in common. */
export function demoRunBase(place: DemoPlace): Omit<RunDocument, 'legs'> {
  const { floor, row, side } = place;
  const south = (row - 1) * ROW_PITCH_MM;
  return {
    id: demoRunId(place),
    level: `F${floor}`,
    area: `Hall ${floor}`,
    type: 'demo-250A-3PN',
    side,
    start: { xMm: 0, yMm: side === 'A' ? south + BACK_TO_BACK_MM : south, zMm: MOUNTING_MM },
    headingDeg: 0,
    conductorSide: side === 'A' ? 'left' : 'right',
    feed: {
      kind: 'end',
      supply: `PDU-F${floor}-${side}`,
      deviceA: 250,
      deviceHundredPercent: false,
      faultKA: 18,
      xOverR: 4,
      cable: { lengthM: 25, ohmPerKm: { r: 0.16, x: 0.09 }, parallel: 1, neutralOhmPerKm: { r: 0.16, x: 0.09 } },
      terminations: 5,
    },
    ...demoHangers(),
  };
}

export function demoHangers(): Pick<
  RunDocument,
  'structure' | 'dropMm' | 'rod' | 'rodStockMm' | 'attachment' | 'supportCapacityKg'
> {
  return {
    structure: { kind: 'continuous' },
    dropMm: ROD_MM,
    rod: '3/8',
    rodStockMm: feet(10),
    attachment: 'anchor',
    supportCapacityKg: 150,
  };
}
