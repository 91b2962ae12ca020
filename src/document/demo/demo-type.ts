import type { BuswayTypeDocument } from '../schema/busway-type.ts';
import { feet, milliohmsPerFoot, pounds, poundsPerFoot } from './feet.ts';

/**
 * The demo's busway type. Every figure is invented and belongs to nobody's product. A step that begins with `TORQUE:`
 * takes a torque reading, `HOLD:` is the hold point, and `CHECK:` is done by another person than the installer.
 */
export function demoType(): BuswayTypeDocument {
  return {
    id: 'demo-250A-3PN',
    sheet: { document: 'Invented data sheet for the demo job', revision: '1', date: '2024-01-15' },
    ratedCurrentA: 250,
    ratedVoltageV: 600,
    poles: 3,
    neutral: 'full',
    hundredPercentRated: false,
    phaseOhmPerKm: { r: milliohmsPerFoot(0.09), x: milliohmsPerFoot(0.045) },
    shortCircuitKA: 22,
    shortCircuitCycles: 3,
    weightKgPerM: poundsPerFoot(8.5),
    stockLengthsMm: [feet(20), feet(10), feet(5)],
    factoryCut: null,
    feed: { joins: true, weightKg: pounds(20) },
    support: {
      maxSpacingMm: feet(10),
      maxEndOverhangMm: feet(2),
      jointClearMm: feet(1),
      fittingWithinMm: feet(2),
      source: 'Invented data sheet for the demo job, revision 1: marked for 10 ft',
    },
    tap: { jointClearMm: feet(1.25), endClearMm: feet(1), minSpacingMm: feet(1), boxLengthMm: feet(1) },
    crossing: { jointClearMm: feet(2), supportClearMm: feet(0.5) },
    joint: { clamps: 2, contactSets: 1, bolts: 2, torqueNm: 24, steps: [...JOINT_STEPS] },
    fittings: {
      elbow: { legMm: feet(1), weightKg: pounds(17), handed: true },
      tee: { legMm: feet(1), weightKg: pounds(26), handed: true },
    },
    prices: demoPrices(),
  };
}

const JOINT_STEPS = [
  'Pieces, lots and conductor sides match on both sides of the joint; ends clean, dry and undamaged, nothing in the slot.',
  'Lower clamp parked clear of the joint.',
  'Sections brought together and aligned, the gap within the sheet.',
  'Upper clamp centred on the joint and its bolt drawn up.',
  'TORQUE: Upper clamp bolt to the value of the sheet; the tool and its calibration are written down.',
  'Contact set of this frame entered, centred on its mark and pushed home.',
  'Seating tool worked towards both ends until nothing moves any more.',
  'HOLD: Seating seen at both ends, pole by pole, before the lower clamp hides it.',
  'Seating tool out and counted; nothing left in the slot.',
  'Lower clamp centred over the joint and its bolt drawn up.',
  'TORQUE: Lower clamp bolt to the value of the sheet; the tool and its calibration are written down.',
  'CHECK: Joint checked by another person, hangers and label included.',
] as const;

/** Invented, in cents. */
function demoPrices(): NonNullable<BuswayTypeDocument['prices']> {
  return {
    sections: [
      { lengthMm: feet(20), price: 128_000 },
      { lengthMm: feet(10), price: 72_000 },
      { lengthMm: feet(5), price: 42_500 },
    ],
    jointKit: 18_500,
    elbow: 64_000,
    tee: 98_000,
    endFeed: 145_000,
    endCap: 9_500,
    support: 6_800,
    tap: 62_000,
    drop: 21_500,
  };
}
