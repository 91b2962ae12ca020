import { expect, test } from 'vitest';
import { placeMarks } from '../../../src/domain/ordering/place-marks.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { aJob, aLayout, aRun, aTap, feet, supportsAt } from '../../support/job.ts';

const run = aRun({
  rod: '3/8',
  drop: feet(6),
  taps: [aTap({ id: 'T7', place: { at: feet(5) } })],
  crossings: [{ at: feet(15), thickness: feet(1), kind: 'fire-wall', fireRatingMin: 60 }],
});
const layout = aLayout(run, [20, 20, 10], {
  supports: supportsAt(2, 11),
  joints: [0, 20, 40].map((at) => ({ at: feet(at) })),
});
const lines = takeOff(aJob({ runs: [run] }), [layout]).filter((line) => line.run !== null);
const marksOf = (item: string) =>
  lines
    .filter((line) => line.item === item)
    .flatMap((line) => placeMarks(line, run, layout).map(({ mark, at }) => `${mark}@${at / feet(1)}`));

test('each place has the mark of what stands there', () => {
  expect(marksOf('section')).toEqual(['P01@0', 'P02@20', 'P03@40']);
  expect(marksOf('clamp')).toEqual(['J01@0', 'J02@20', 'J03@40']);
  expect(marksOf('nut')).toEqual(['H01@2', 'H02@11']);
  expect(marksOf('tap')).toEqual(['T7@5']);
  expect(marksOf('label')).toEqual(['J01@0', 'T7@5', 'J02@20', 'J03@40']);
  expect(marksOf('end-feed')).toEqual(['feed@0']);
  expect(marksOf('end-cap')).toEqual(['end@50']);
  expect(marksOf('fire-seal')).toEqual(['wall@15']);
});

test('no line of a run is left without a mark', () => {
  for (const line of lines) for (const { mark } of placeMarks(line, run, layout)) expect(mark, line.item).not.toBe('');
});

test('both joints of a centre feed stand at one distance and keep their own marks', () => {
  const centre = aRun({}, { kind: 'centre', at: feet(20) });
  const fed = aLayout(centre, [20, 20], { joints: [{ at: feet(20) }, { at: feet(20) }] });
  const clamp = { item: 'clamp' as const, places: [feet(20), feet(20)] };
  expect(placeMarks(clamp, centre, fed).map(({ mark }) => mark)).toEqual(['J01', 'J02']);
});

test('the floor’s own marks stand where it has them', () => {
  const marks = { pieces: ['P01', 'P04', 'P03'], joints: [], supports: [] };
  const sections = lines.filter(({ item }) => item === 'section');
  expect(sections.flatMap((line) => placeMarks(line, run, layout, marks)).map(({ mark }) => mark)).toEqual([
    'P01',
    'P04',
    'P03',
  ]);
});
