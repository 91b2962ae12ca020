import { expect, test } from 'vitest';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { costPerProductiveHour } from '../../../src/domain/labour/crew-cost.ts';
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
    { role: 'foreman', number: 1, ratePerHour: 9800, effectiveness: 0.5 },
    { role: 'journeyman', number: 2, ratePerHour: 8800, effectiveness: 1 },
    { role: 'apprentice', number: 1, ratePerHour: 5800, effectiveness: 0.75 },
  ];
  expect(costPerProductiveHour(crew)).toBeCloseTo(10215.3846, 4);
  expect(costPerProductiveHour([])).toBeNull();
  expect(costPerProductiveHour([{ role: 'watch', number: 1, ratePerHour: 100, effectiveness: 0 }])).toBeNull();
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
