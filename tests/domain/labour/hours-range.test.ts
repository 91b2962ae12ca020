import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { figures } from '../../../src/domain/figures.ts';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { hoursRange, percentile, spreadShares } from '../../../src/domain/labour/hours-range.ts';
import { simulateHours } from '../../../src/domain/labour/simulate-hours.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { plainTrials } from '../../proof/reference/hours-trials.ts';
import { bidScenario } from '../../support/bid-scenario.ts';
import { aJob, aLabourBook, aLayout, anActivity, aRun } from '../../support/job.ts';

const { job, layouts } = bidScenario({ trials: 1 });
const lines = computeLabour(job, layouts, takeOff(job, layouts))?.lines ?? [];

const mean = (totals: Float64Array) => totals.reduce((sum, total) => sum + total, 0) / totals.length;
function sd(totals: Float64Array): number {
  const middle = mean(totals);
  return Math.sqrt(totals.reduce((sum, total) => sum + (total - middle) ** 2, 0) / (totals.length - 1));
}

test.each([0, 0.3, 0.7, 1])('at a correlation of %d the trials agree with the closed form', (correlation) => {
  const settings = { correlation, seed: 1, trials: 10_000 };
  const range = hoursRange(lines, settings);
  const totals = simulateHours(lines, settings);
  expect(Math.abs(mean(totals) / range.mean - 1)).toBeLessThan(0.005);
  expect(Math.abs(sd(totals) / range.sd - 1)).toBeLessThan(0.02);
});

test('the same seed gives the same totals, and another seed others', () => {
  const settings = { correlation: 0.4, seed: 7, trials: 500 };
  expect(simulateHours([...lines], settings)).toEqual(simulateHours(lines, settings));
  expect(simulateHours(lines, { ...settings, seed: 8 })).not.toEqual(simulateHours(lines, settings));
});

test('twelve equal activities of 20 % spread 5.8 % together when independent, and 14.7 % at a correlation of 0.5', () => {
  // From the trade's own reckoning: 20/sqrt(12) and 20 sqrt((1 + 11 x 0.5)/12).
  const twelve = lines.filter(({ activity }) => activity === 'joint').slice(0, 12);
  const ids = [
    'handle-section',
    'handle-tap',
    'lay-out',
    'support',
    'section',
    'joint',
    'elbow',
    'tee',
    'tap',
    'drop',
    'label',
    'punch',
  ] as const;
  const spread = 0.2 * Math.sqrt(7);
  const base = { low: 1 - spread, likely: 1, high: 1 + spread };
  const equal = twelve.map((line, i) => ({
    ...line,
    activity: ids[i]!,
    base,
    quantity: 1,
    conditionFactor: 1,
    learningFactor: 1,
    nonProductiveFactor: 1,
    hours: 1,
  }));
  const relative = (correlation: number) => {
    const range = hoursRange(equal, { correlation, seed: 1, trials: 1 });
    return (100 * range.sd) / range.mean;
  };
  expect(relative(0).toFixed(1)).toBe('5.8');
  expect(relative(0.5).toFixed(1)).toBe('14.7');
});

test('all joints of a job move together: twice the joints spread twice as far', () => {
  const range = (joints: number) => hoursRange(jointLines(joints), { correlation: 0, seed: 1, trials: 1000 });
  expect(range(8).sd).toBeCloseTo(2 * range(4).sd, 12);
  expect(range(8).p90).toBeCloseTo(2 * range(4).p90, 9);
});

function jointLines(joints: number) {
  const run = aRun();
  const book = aLabourBook({ activities: [anActivity('joint', 0.6)] });
  const one = aJob({ runs: [run], labourBook: book });
  const layout = [aLayout(run, Array(joints + 1).fill(10))];
  return computeLabour(one, layout, takeOff(one, layout))?.lines ?? [];
}

test('hours without a spread are certain', () => {
  const certain = jointLines(4).map((line) => ({ ...line, base: { low: 0.6, likely: 0.6, high: 0.6 } }));
  const range = hoursRange(certain, { correlation: 0.5, seed: 1, trials: 50 });
  for (const value of [range.likely, range.mean, range.p10, range.p50, range.p80, range.p90]) {
    expect(value).toBeCloseTo(2.4, 12);
  }
  expect(range.sd).toBe(0);
});

test('no work is no hours, in every figure', () => {
  const zero = { likely: 0, mean: 0, sd: 0, p10: 0, p50: 0, p80: 0, p90: 0 };
  expect(hoursRange([], { correlation: 0, seed: 1, trials: 10 })).toEqual(zero);
});

test('percentiles rise, stay within low and high, and no figure is ever without a number', () => {
  const estimate = fc
    .tuple(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
    )
    .map(([low, toLikely, toHigh]) => ({ low, likely: low + toLikely, high: low + toLikely + toHigh }));
  const settings = fc.record({
    correlation: fc.double({ min: 0, max: 1, noNaN: true }),
    seed: fc.integer({ min: -(2 ** 31), max: 2 ** 31 - 1 }),
    trials: fc.integer({ min: 1, max: 40 }),
  });
  fc.assert(
    fc.property(estimate, settings, (base, chosen) => {
      const own = jointLines(1).map((line) => ({ ...line, base, hours: base.likely }));
      const { mean: expected, sd: spread, p10, p50, p80, p90 } = hoursRange(own, chosen);
      const rising = [base.low - 1e-9, p10, p50, p80, p90, base.high + 1e-9];
      expect([...rising].sort((a, b) => a - b)).toEqual(rising);
      expect([expected, spread].every(Number.isFinite)).toBe(true);
    }),
    { seed: 3, numRuns: 200 },
  );
});

test('a percentile lies between its neighbours on a straight line', () => {
  const sorted = Float64Array.of(1, 2, 3, 4, 5);
  expect(percentile(sorted, 0.5)).toBe(3);
  expect(percentile(sorted, 0.1)).toBeCloseTo(1.4, 12);
  expect(percentile(Float64Array.of(7), 0.8)).toBe(7);
});

test('the shares of the spread sum to one, greatest first', () => {
  const shares = spreadShares(lines, 0.3);
  expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  expect([...shares].sort((a, b) => b.share - a.share)).toEqual(shares);
  expect(shares[0]?.activity).toBe('tap');
});

describe('the demo job, correlated as its labour book says', () => {
  const demo = toModel(demoJob());
  const { lines: own, range } = figures(demo).labour!;
  const book = demo.labourBook!;

  test.each([1, 2, 3])(
    'trials of seed %d agree with the closed form: mean within 0.5 %, standard deviation within 2 %',
    (seed) => {
      expect(book.correlation).toBe(0.5);
      const totals = simulateHours([...own], { ...book, seed, trials: 10_000 });
      expect(Math.abs(mean(totals) / range.mean - 1)).toBeLessThan(0.005);
      expect(Math.abs(sd(totals) / range.sd - 1)).toBeLessThan(0.02);
    },
  );

  test.each([0.1, 0.5, 0.9])(
    'so do they at a correlation of %d where every estimate leans as far to high as it can',
    (correlation) => {
      const leaning = own.map((line) => {
        const { likely } = line.base;
        return { ...line, base: { low: likely * 0.9, likely: likely * 0.9, high: likely * 4 } };
      });
      const settings = { correlation, seed: 1, trials: 10_000 };
      const { mean: middle, sd: spread } = hoursRange(leaning, settings);
      const totals = simulateHours(leaning, settings);
      expect(Math.abs(mean(totals) / middle - 1)).toBeLessThan(0.005);
      expect(Math.abs(sd(totals) / spread - 1)).toBeLessThan(0.02);
    },
  );

  test('a plain loop with the library’s own inverse for every draw comes to the same percentiles', () => {
    // Few lines of each activity stand for all: the loop is slow. Percentiles of 3,000 trials err by some 0.3 %.
    const few = own.filter(({ run }) => run === own[0]?.run || run === own.at(-1)?.run);
    const totals = Float64Array.from(plainTrials(few, { correlation: 0.5, seed: 4, trials: 3_000 }));
    const ours = hoursRange(few, { correlation: 0.5, seed: 1, trials: 10_000 });
    for (const [part, value] of [
      [0.1, ours.p10],
      [0.5, ours.p50],
      [0.8, ours.p80],
      [0.9, ours.p90],
    ] as const)
      expect(Math.abs(percentile(totals, part) / value - 1)).toBeLessThan(0.01);
    expect(Math.abs(mean(totals) / ours.mean - 1)).toBeLessThan(0.005);
    expect(Math.abs(sd(totals) / ours.sd - 1)).toBeLessThan(0.05);
  });

  test('trials that were run are not run again for the same lines, and are for other ones', () => {
    const settings = { correlation: 0.2, seed: 9, trials: 50 };
    const once = simulateHours(own, settings);
    expect(simulateHours(own, settings)).toBe(once);
    expect(simulateHours(own, { ...settings, seed: 10 })).not.toEqual(once);
    expect(simulateHours([...own], settings)).toEqual(once);
  });
});
