import { expect, test } from 'vitest';
import { budgetFor } from '../../../src/domain/labour/budget-for.ts';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { bidScenario } from '../../support/bid-scenario.ts';
import { feet } from '../../support/job.ts';

const { job, layouts } = bidScenario({
  trials: 1,
  learning: null,
  nonProductivePercent: 0,
  factors: { height: [], congestion: { open: 0, normal: 0, tight: 0 }, storeyPercentEach: 0, livePercent: 0 },
});
const labour = computeLabour(job, layouts, takeOff(job, layouts))!;
const budgets = budgetFor(labour);

test('a run has a budget by activity, and every piece of work its part of it', () => {
  const budget = budgets.get('L1-R01');
  expect(budget?.hours.get('joint')).toBeCloseTo(2.4, 12);
  expect(budget?.each.get('joint')).toBeCloseTo(0.6, 12);
  expect(budget?.each.get('test-insulation')).toBeCloseTo(1.5, 12);
  expect(budget?.each.get('lay-out')).toBeCloseTo(1.4, 12);
});

test('a section of 20 ft has its own budget, and one of 10 ft another', () => {
  const budget = budgets.get('L3-R07');
  expect(budget?.hours.get('section')).toBeCloseTo(3.6, 12);
  expect(budget?.eachSection.get(feet(20))).toBeCloseTo(1, 12);
  expect(budget?.eachSection.get(feet(10))).toBeCloseTo(0.6, 12);
});

test('the budgets of all runs are the hours of the job', () => {
  const sum = [...budgets.values()]
    .flatMap(({ hours }) => [...hours.values()])
    .reduce((total, part) => total + part, 0);
  expect(sum).toBeCloseTo(labour.range.likely, 8);
});
