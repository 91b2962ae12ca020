import { expect, test } from 'vitest';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { costPerProductiveHour, overtimeFactor } from '../../../src/domain/labour/crew-cost.ts';
import { lengthUnit } from '../../../src/domain/labour/length-unit.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { FOOT, METRE } from '../../../src/domain/units/length.ts';
import { aJob, aLabourBook, aLayout, aLevel, aRun } from '../../support/job.ts';

test('without a labour book there are no hours, not zero hours', () => {
  const job = aJob();
  expect(computeLabour(job, [aLayout(job.runs[0]!, [10])], [])).toBeNull();
});

test('a crew costs what it is paid over what it puts in, and nobody productive has no price', () => {
  const crew = [
    { role: 'foreman', number: 1, ratePerHour: 9800, burdenPercent: 0, effectiveness: 0.5 },
    { role: 'journeyman', number: 2, ratePerHour: 8800, burdenPercent: 0, effectiveness: 1 },
    { role: 'apprentice', number: 1, ratePerHour: 5800, burdenPercent: 0, effectiveness: 0.75 },
  ];
  expect(costPerProductiveHour({ crew, overtime: null })).toBeCloseTo(10215.3846, 4);
  expect(costPerProductiveHour({ crew: [], overtime: null })).toBeNull();
  const watch = { role: 'watch', number: 1, ratePerHour: 100, burdenPercent: 0, effectiveness: 0 };
  expect(costPerProductiveHour({ crew: [watch], overtime: null })).toBeNull();
});

test('burden is on all that is paid, and each trade has its own', () => {
  const crew = [
    { role: 'journeyman', number: 2, ratePerHour: 8000, burdenPercent: 50, effectiveness: 1 },
    { role: 'apprentice', number: 1, ratePerHour: 4000, burdenPercent: 25, effectiveness: 0.5 },
  ];
  // By hand: (2 x 80 x 1.5 + 40 x 1.25) / 2.5 = 290 / 2.5.
  expect(costPerProductiveHour({ crew, overtime: null })).toBeCloseTo(11_600, 9);
});

test.each([
  // Common practice: paid 1.10 over 0.93 done, and 1.167 over 0.86.
  [50, 0.93, 1.18],
  [60, 0.86, 1.36],
])(
  'a week of %d hours at time and a half, %d of the work done in each: an effective hour costs %d times as much',
  (hoursPerWeek, productivity, dearer) => {
    const crew = [{ role: 'journeyman', number: 2, ratePerHour: 10_000, burdenPercent: 0, effectiveness: 1 }];
    const overtime = { hoursPerWeek, straightHours: 40, premium: 1.5, productivity };
    expect(costPerProductiveHour({ crew, overtime })! / 10_000).toBeCloseTo(dearer, 2);
  },
);

test('a week within straight time costs what it would without overtime', () => {
  expect(overtimeFactor({ hoursPerWeek: 38, straightHours: 40, premium: 1.5 })).toBe(1);
});

test('hours lost of the day stretch the rest: half an hour of eight is eight over seven and a half', () => {
  const run = aRun();
  const labourBook = aLabourBook({ nonProductiveDay: { lostHours: 0.5, dayHours: 8 } });
  const job = aJob({ runs: [run], labourBook });
  const layouts = [aLayout(run, [10, 10])];
  expect(computeLabour(job, layouts, takeOff(job, layouts))?.range.likely).toBeCloseTo((0.6 * 8) / 7.5, 12);
});

test('a unit is a length with or without a count, and any other word counts pieces', () => {
  expect(lengthUnit('100 ft')).toBe(100 * FOOT);
  expect(lengthUnit('10m')).toBe(10 * METRE);
  expect(lengthUnit('M')).toBe(METRE);
  expect(lengthUnit('0.5 m')).toBe(METRE / 2);
  expect(lengthUnit('1,000 ft')).toBe(1000 * FOOT);
  expect(lengthUnit('per 100 ft')).toBe(100 * FOOT);
  expect(lengthUnit('each')).toBeNull();
  expect(lengthUnit('0 ft')).toBeNull();
  expect(lengthUnit('')).toBeNull();
  expect(lengthUnit('100')).toBeNull();
  expect(lengthUnit('constructor')).toBeNull();
});

test('levels are listed in the order of work, runs in the order of the document, and hours for the whole job stand apart', () => {
  const levels = [
    aLevel({ id: 'top', order: 2 }),
    aLevel({ id: 'ground', order: 1 }),
    aLevel({ id: 'empty', order: 0 }),
  ];
  const runs = [aRun({ id: 'b', level: 'top' }), aRun({ id: 'a', level: 'ground' })];
  const extra = { item: 'Move in', level: null, quantity: 1, unit: 'job', price: null, hours: 8, note: null };
  const job = aJob({ levels, runs, extras: [extra], labourBook: aLabourBook() });
  const layouts = runs.map((run) => aLayout(run, [10, 10]));
  const labour = computeLabour(job, layouts, takeOff(job, layouts));
  expect(labour?.byLevel.map(({ level }) => level)).toEqual(['ground', 'top']);
  expect(labour?.byRun.map(({ run }) => run)).toEqual(['b', 'a']);
  expect(labour?.byActivity).toEqual([
    { activity: 'joint', quantity: 2, hours: 1.2 },
    { activity: 'extra', quantity: 1, hours: 8 },
  ]);
  expect(labour?.range.likely).toBeCloseTo(9.2, 12);
});
