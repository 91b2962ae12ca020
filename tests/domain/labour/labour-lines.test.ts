import { expect, test } from 'vitest';
import { labourLines } from '../../../src/domain/labour/labour-lines.ts';
import type { LabourLine } from '../../../src/domain/labour/result.ts';
import { workOf } from '../../../src/domain/labour/work-of.ts';
import type { LabourActivity, LabourBook, Level, Run } from '../../../src/domain/model.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { FOOT, fromMm } from '../../../src/domain/units/length.ts';
import { aJob, aLabourBook, aLayout, aLevel, anActivity, aRun, aTap, feet } from '../../support/job.ts';

interface Setting {
  readonly levels?: readonly Level[];
  readonly runs?: readonly Run[];
  readonly sections?: readonly number[];
  readonly book?: Partial<LabourBook>;
  readonly unsound?: readonly string[];
}

function linesFor(activities: readonly LabourActivity[], setting: Setting = {}): readonly LabourLine[] {
  const book = aLabourBook({ activities, ...setting.book });
  const runs = setting.runs ?? [aRun()];
  const job = aJob({ runs, levels: setting.levels ?? [aLevel()], labourBook: book });
  const layouts = runs.map((run) =>
    aLayout(run, setting.sections ?? [20, 10], { ok: !setting.unsound?.includes(run.id) }),
  );
  return labourLines(workOf(job, layouts, takeOff(job, layouts)), book, job.extras);
}

test.each([
  ['100 ft', 0.3],
  ['ft', 30],
  ['m', 9.144],
  ['100 m', 0.09144],
  ['10m', 0.9144],
  ['run', 1],
])('laying out 30 ft of run counts as %s: %d', (unit, quantity) => {
  const lines = linesFor([anActivity('lay-out', 2, { unit })]);
  expect(lines.map((line) => line.quantity)).toEqual([expect.closeTo(quantity, 12)]);
});

test('sections by the piece are counted, and by the metre are measured', () => {
  const each = linesFor([anActivity('section', 1)]);
  expect(each.map(({ pieces, quantity, length }) => [pieces, quantity, length])).toEqual([
    [1, 1, feet(20)],
    [1, 1, feet(10)],
  ]);
  const metres = linesFor([anActivity('section', 1, { unit: 'm' })]);
  expect(metres.map(({ quantity }) => quantity)).toEqual([6.096, 3.048]);
});

test('work that has no length is counted by the piece whatever its unit says', () => {
  expect(linesFor([anActivity('joint', 1, { unit: 'ft' })])).toMatchObject([{ quantity: 1, pieces: 1 }]);
});

const bands = [5, 10].map((upTo) => ({ upToA: null, upTo: upTo * FOOT, low: upTo, likely: upTo, high: upTo }));

test.each([
  [[5], 5],
  [[5.01], 10],
  [[10], 10],
  [[20], 10],
])('a section of %d ft takes the hours of the first band it does not pass', (sections, likely) => {
  const lines = linesFor([anActivity('section', 1, { bands })], { sections });
  expect(lines).toMatchObject([{ base: { likely } }]);
});

const height = [
  { over: fromMm(3000), percent: 10 },
  { over: fromMm(4500), percent: 20 },
];
const factors = { height, congestion: { open: 0, normal: 25, tight: 35 }, storeyPercentEach: 10, livePercent: 30 };

test.each([
  [3000, 1],
  [3001, 1.1],
  [4500, 1.1],
  [4501, 1.2],
])('at a mounting height of %d mm the factor is %d: a height percentage counts strictly above it', (mm, factor) => {
  const levels = [aLevel({}, { mountingHeight: fromMm(mm) })];
  const lines = linesFor([anActivity('joint', 1, { factors: ['height'] })], { levels, book: { factors } });
  expect(lines).toMatchObject([{ conditionFactor: expect.closeTo(factor, 12) }]);
});

const hard = [aLevel({}, { mountingHeight: fromMm(5000), congestion: 'normal', liveArea: true, storeysAboveGrade: 1 })];
const allFactors = anActivity('joint', 1, { factors: ['height', 'congestion', 'storey', 'live'] });

test('four factors of 1.2, 1.25, 1.3 and 1.1 add to 1.85 and compound to 2.145', () => {
  const added = linesFor([allFactors], { levels: hard, book: { factors, policy: 'add' } });
  expect(added).toMatchObject([{ conditionFactor: expect.closeTo(1.85, 12) }]);
  const compounded = linesFor([allFactors], { levels: hard, book: { factors, policy: 'compound' } });
  expect(compounded).toMatchObject([{ conditionFactor: expect.closeTo(2.145, 12) }]);
});

test('a factor leaves alone the activity that does not name it', () => {
  const papers = anActivity('test-papers', 1);
  expect(linesFor([papers], { levels: hard, book: { factors } })).toMatchObject([{ conditionFactor: 1, factors: [] }]);
});

test('conditions of the job meet those of the level by the same policy, on the activities that feel any or that they name', () => {
  const jobConditions = [
    { name: 'night shift', percent: 8, activities: null },
    { name: 'new crew', percent: 10, activities: ['test-papers'] },
    { name: 'prepared ceiling', percent: -5, activities: ['joint'] },
  ];
  const of = (policy: 'add' | 'compound') =>
    linesFor([allFactors, anActivity('test-papers', 1), anActivity('end-cap', 1)], {
      levels: hard,
      book: { factors, policy, jobConditions },
    });
  const factor = (lines: readonly LabourLine[], id: string) =>
    lines.find(({ activity }) => activity === id)?.conditionFactor;
  expect(factor(of('add'), 'joint')).toBeCloseTo(1.85 + 0.08 - 0.05, 12);
  expect(factor(of('compound'), 'joint')).toBeCloseTo(2.145 * 1.08 * 0.95, 12);
  expect(factor(of('add'), 'test-papers')).toBeCloseTo(1.1, 12);
  expect(factor(of('add'), 'end-cap')).toBe(1);
  expect(of('add')[0]?.factors.map(({ name }) => name)).toEqual([
    'height',
    'congestion',
    'storey',
    'live',
    'night shift',
    'prepared ceiling',
  ]);
});

const two = [aLevel({ id: 'F2', order: 2 }), aLevel({ id: 'F1', order: 1 })];
const four = [
  aRun({ id: 'upper-1', level: 'F2' }),
  aRun({ id: 'lower-1', level: 'F1' }),
  aRun({ id: 'upper-2', level: 'F2' }),
  aRun({ id: 'lower-2', level: 'F1' }),
];
const learning = { rate: 0.8, referenceRepeat: 1, over: 'run', activities: ['joint'] } as const;
const repeats = (lines: readonly LabourLine[]) => Object.fromEntries(lines.map(({ run, repeat }) => [run, repeat]));

test('runs learn in level order first and document order next', () => {
  const lines = linesFor([anActivity('joint', 1)], { levels: two, runs: four, book: { learning } });
  expect(repeats(lines)).toEqual({ 'lower-1': 1, 'lower-2': 2, 'upper-1': 3, 'upper-2': 4 });
  expect(lines.find(({ run }) => run === 'upper-2')?.learningFactor).toBeCloseTo(0.64, 12);
});

test('over levels, every run of a level is the same repeat', () => {
  const book = { learning: { ...learning, over: 'level' } as const };
  const lines = linesFor([anActivity('joint', 1)], { levels: two, runs: four, book });
  expect(repeats(lines)).toEqual({ 'lower-1': 1, 'lower-2': 1, 'upper-1': 2, 'upper-2': 2 });
});

test('a run that cannot be laid out teaches nobody', () => {
  const lines = linesFor([anActivity('joint', 1)], {
    levels: two,
    runs: four,
    book: { learning },
    unsound: ['lower-1'],
  });
  expect(repeats(lines)).toEqual({ 'lower-2': 1, 'upper-1': 2, 'upper-2': 3 });
});

test('an activity that is not learned stays at its base hours', () => {
  const lines = linesFor([anActivity('test-joint', 1)], { levels: two, runs: four, book: { learning } });
  expect(lines.map(({ repeat, learningFactor }) => [repeat, learningFactor])).toEqual(Array(4).fill([null, 1]));
});

test('an activity that the labour book does not hold counts nothing', () => {
  expect(linesFor([])).toEqual([]);
});

test('hours added by hand carry the non-productive time and no other factor, and one without hours is no line', () => {
  const book = aLabourBook({ activities: [], nonProductivePercent: 10 });
  const extra = { item: 'Scan for tendons', level: 'F1', quantity: 3, unit: 'day', price: null, note: null };
  const extras = [
    { ...extra, hours: 4 },
    { ...extra, hours: null },
  ];
  const job = aJob({ runs: [], extras, labourBook: book });
  const lines = labourLines(workOf(job, [], []), book, job.extras);
  expect(lines).toMatchObject([
    { activity: 'extra', note: 'Scan for tendons', run: null, level: 'F1', hours: expect.closeTo(13.2, 12) },
  ]);
});

test('every activity finds its work in the run', () => {
  const taps = [aTap({ id: 'a', place: { at: feet(5) } }), aTap({ id: 'b', place: { at: feet(8) }, drop: null })];
  const crossings = [{ at: feet(12), thickness: feet(1), kind: 'fire-wall', fireRatingMin: 60 } as const];
  const run = aRun({ taps, crossings }, { terminations: 5 });
  const ids = [
    'handle-tap',
    'handle-section',
    'termination',
    'tap',
    'drop',
    'label',
    'fire-seal',
    'test-insulation',
    'test-ground',
    'test-joint',
    'torque-log',
    'test-tap',
    'thermal-scan',
    'test-papers',
    'punch',
    'end-feed',
    'end-cap',
  ];
  const lines = linesFor(
    ids.map((id) => anActivity(id, 1)),
    { runs: [run], sections: [10, 10] },
  );
  expect(Object.fromEntries(lines.map(({ activity, quantity }) => [activity, quantity]))).toEqual({
    'handle-section': 2,
    'handle-tap': 2,
    termination: 5,
    tap: 2,
    drop: 1,
    label: 3,
    'fire-seal': 1,
    'test-insulation': 1,
    'test-ground': 1,
    'test-joint': 1,
    'torque-log': 1,
    'test-tap': 2,
    'thermal-scan': 1,
    'test-papers': 1,
    punch: 1,
    'end-feed': 1,
    'end-cap': 1,
  });
});

test('with all its factors a line of hours is their product', () => {
  const book = { learning, factors, nonProductivePercent: 6 };
  const lines = linesFor([{ ...allFactors, likely: 0.6 }], { levels: hard, book });
  expect(lines[0]?.hours).toBeCloseTo(1 * 0.6 * 1.85 * 1 * 1.06, 12);
});
