import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import { closureStrips, slotOpenings, stripLengths } from '../../../src/domain/ordering/closure-strips.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { toMetres } from '../../../src/domain/units/length.ts';
import { aJob, aLayout, aRun, aTap, aType, feet } from '../../support/job.ts';

const type = aType(); // boxes of 1 ft
const tapsAt = (...places: readonly number[]) =>
  places.map((place, i) => aTap({ id: `T${i}`, place: { at: feet(place) } }));
const openAt = (pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([from, to]) => ({ from: feet(from), to: feet(to) }));

test('20 ft of slot with boxes of 1 ft at 5 and 10 ft stands open in three places', () => {
  const run = aRun({ taps: tapsAt(5, 10) });
  expect(slotOpenings(type, aLayout(run, [20]))).toEqual(
    openAt([
      [0, 4.5],
      [5.5, 9.5],
      [10.5, 20],
    ]),
  );
});

test('a joint does not end an opening, a fitting does, and a fitting has no slot to close', () => {
  const run = aRun();
  const pieces: PlacedPiece[] = [
    { from: 0, to: feet(20), kind: 'stock', hand: null },
    { from: feet(20), to: feet(30), kind: 'cut', hand: null },
    { from: feet(30), to: feet(32), kind: 'elbow', hand: 'inside' },
    { from: feet(32), to: feet(42), kind: 'stock', hand: null },
  ];
  expect(slotOpenings(type, aLayout(run, [], { pieces, length: feet(42) }))).toEqual(
    openAt([
      [0, 30],
      [32, 42],
    ]),
  );
});

test('boxes that touch leave nothing between them, and a box of unknown length covers nothing', () => {
  const run = aRun({ taps: tapsAt(0.5, 1.5, 9.5) });
  expect(slotOpenings(type, aLayout(run, [10]))).toEqual(openAt([[2, 9]]));
  const unknown = aType({ tap: { ...type.tap, boxLength: null } });
  expect(slotOpenings(unknown, aLayout(run, [10]))).toEqual(openAt([[0, 10]]));
});

// Pitch 3.5 ft from 1.75 ft over 70 ft: 20 boxes of 1 ft, so 50 ft stay open (the standard run of the bid scenario):
// 1.25 ft before the first and after the last box and 19 gaps of 2.5 ft = 2.5 + 47.5.
test('the standard run leaves 21 openings that add up to its 50 ft', () => {
  const run = aRun({ taps: tapsAt(...Array.from({ length: 20 }, (_, i) => 1.75 + 3.5 * i)) });
  const openings = slotOpenings(type, aLayout(run, [20, 20, 20, 10]));
  expect(openings).toHaveLength(21);
  expect(openings.reduce((sum, { from, to }) => sum + to - from, 0)).toBe(feet(50));
  expect(stripLengths(openings)).toEqual([
    { length: feet(2.5), count: 19 },
    { length: feet(1.25), count: 2 },
  ]);
  // By hand: a strip of 8 ft gives three of 2.5 ft, the rest of 0.5 ft serves nothing; 19 gaps take six strips and a
  // seventh, whose rest of 5.5 ft holds both ends of 1.25 ft.
  const { plan, strips } = closureStrips(openings, { stock: feet(8), wastePercent: 0 });
  expect([plan.sticks, strips]).toEqual([7, 7]);
  expect(closureStrips(openings, { stock: feet(8), wastePercent: 5 }).strips).toBe(8); // 7.35
});

test('an opening longer than the strip takes whole strips and a rest', () => {
  const { plan } = closureStrips(
    openAt([
      [0, 9],
      [10, 14],
      [15, 19],
    ]),
    { stock: feet(8), wastePercent: 0 },
  );
  expect(plan.sticks).toBe(3);
});

test('the openings add up to the metres of the takeoff wherever boxes do not overlap', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 38 }), { maxLength: 20 }), (places) => {
      const run = aRun({ taps: tapsAt(...places.map((place) => place + 0.5)) });
      const layout = aLayout(run, [20, 20]);
      const open = slotOpenings(type, layout).reduce((sum, { from, to }) => sum + to - from, 0);
      const counted = takeOff(aJob({ runs: [run] }), [layout]).find(({ item }) => item === 'slot-closure');
      expect(toMetres(open)).toBeCloseTo(counted?.quantity ?? 0, 9);
    }),
  );
});
