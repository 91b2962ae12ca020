import { expect, test } from 'vitest';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { INSTALL_ACTIVITIES } from '../../../src/domain/labour/install-activities.ts';
import { pertMean, publishedPertVariance } from '../../../src/domain/labour/pert.ts';
import type { Labour, LabourLine } from '../../../src/domain/labour/result.ts';
import type { LabourBook } from '../../../src/domain/model.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { bidScenario } from '../../support/bid-scenario.ts';

// The worked bid of four floors with twelve standard runs each, reckoned by hand with the starter units: 34.72 h to
// install a run and 9.60 h to test it, congestion 15 % and one per cent a storey added, learning 95 % from the 8th.

function labourOf(book: Partial<LabourBook> = {}): Labour {
  const { job, layouts } = bidScenario({ trials: 100, ...book });
  const labour = computeLabour(job, layouts, takeOff(job, layouts));
  if (!labour) throw new Error('the scenario has a labour book');
  return labour;
}

const isInstall = ({ activity }: LabourLine) => INSTALL_ACTIVITIES.some((id) => id === activity);
const hours = (lines: readonly LabourLine[]) => lines.reduce((sum, line) => sum + line.hours, 0);
const bare = { nonProductivePercent: 0, learning: null };
const noConditions = {
  factors: { height: [], congestion: { open: 0, normal: 0, tight: 0 }, storeyPercentEach: 0, livePercent: 0 },
};

test('a standard run takes 34.72 h to install and 9.60 h to test, 2,127.4 h for 48 of them', () => {
  const { lines, range } = labourOf({ ...bare, ...noConditions });
  const run = lines.filter((line) => line.run === 'L1-R01');
  expect(hours(run.filter(isInstall))).toBeCloseTo(34.72, 9);
  expect(hours(run.filter((line) => !isInstall(line)))).toBeCloseTo(9.6, 9);
  expect(range.likely).toBeCloseTo(2127.36, 9);
});

test.each([
  ['lay-out', 1.4],
  ['support', 4],
  ['section', 3.6],
  ['joint', 2.4],
  ['end-feed', 1.5],
  ['termination', 2],
  ['end-cap', 0.15],
  ['slot-closure', 0.75],
  ['tap', 8],
  ['drop', 7],
  ['label', 1.92],
])('%s takes %d h in a standard run', (activity, expected) => {
  const { lines } = labourOf({ ...bare, ...noConditions });
  const own = lines.filter((line) => line.run === 'L1-R01' && line.activity === activity);
  expect(hours(own)).toBeCloseTo(expected, 9);
});

test('floors learn from each other: 494.8, 454.9, 441.7 and 434.6 h to install, 1,826.0 together', () => {
  const { lines } = labourOf({ nonProductivePercent: 0 });
  const floor = (level: string) => hours(lines.filter((line) => isInstall(line) && line.level === level));
  const floors = ['L1', 'L2', 'L3', 'L4'].map((level) => floor(level).toFixed(1));
  expect(floors).toEqual(['494.8', '454.9', '441.7', '434.6']);
  expect(hours(lines.filter(isInstall)).toFixed(1)).toBe('1826.0');
});

test('tests take 460.8 h untouched by conditions and learning, and the whole is 2,286.8 h', () => {
  const { lines, range } = labourOf({ nonProductivePercent: 0 });
  expect(hours(lines.filter((line) => !isInstall(line)))).toBeCloseTo(460.8, 9);
  expect(range.likely.toFixed(1)).toBe('2286.8');
});

test('six per cent of non-productive time makes it 2,424.0 h, and 2,546.5 h without learning', () => {
  expect(labourOf().range.likely.toFixed(1)).toBe('2424.0');
  expect(labourOf({ learning: null }).range.likely.toFixed(1)).toBe('2546.5');
});

test('a productive hour costs 332 / 3.25, not the mean of 83, and the labour 247,618', () => {
  const { costPerProductiveHour, range } = labourOf();
  expect(costPerProductiveHour).toBe(33200 / 3.25);
  expect(Math.round((range.likely * (costPerProductiveHour ?? 0)) / 100)).toBe(247618);
});

test('each floor average of the learning curve is 1.033, 0.941, 0.906 and 0.884', () => {
  const { lines } = labourOf();
  const joints = lines.filter(({ activity }) => activity === 'joint');
  const average = (level: string) =>
    joints.filter((line) => line.level === level).reduce((sum, { learningFactor }) => sum + learningFactor / 12, 0);
  expect(['L1', 'L2', 'L3', 'L4'].map((level) => average(level).toFixed(3))).toEqual([
    '1.033',
    '0.941',
    '0.906',
    '0.884',
  ]);
});

test('the parts sum to the whole', () => {
  const { range, byActivity, byLevel, byRun } = labourOf();
  const sum = (parts: readonly { hours: number }[]) => parts.reduce((total, part) => total + part.hours, 0);
  expect(sum(byActivity)).toBeCloseTo(range.likely, 8);
  expect(sum(byLevel)).toBeCloseTo(range.likely, 8);
  expect(sum(byRun)).toBeCloseTo(range.likely, 8);
});

test('risk on the cost by the published moments: mean 1,803,907, P80 1,825,054 if independent and 1,837,986 if fully linked', () => {
  // Labour −10/+35 %, material with its tax −2/+5 %, other cost and supervision −5/+15 %, worked by hand with the published
  // variance ((b − a) / 6)²; 0.8416 is the standard normal's 80 %.
  const parts = [
    { likely: 247_618.22, down: 0.1, up: 0.35 },
    { likely: 1_263_100 + 88_417, down: 0.02, up: 0.05 },
    { likely: 112_300 + 72_320, down: 0.05, up: 0.15 },
  ].map(({ likely, down, up }) => ({ low: likely * (1 - down), likely, high: likely * (1 + up) }));
  const mean = parts.reduce((sum, part) => sum + pertMean(part), 0);
  const deviations = parts.map((part) => Math.sqrt(publishedPertVariance(part)));
  const linked = deviations.reduce((sum, deviation) => sum + deviation, 0);
  expect(Math.round(mean)).toBe(1_803_907);
  expect(Math.round(mean + 0.8416 * Math.hypot(...deviations))).toBe(1_825_054);
  expect(Math.round(mean + 0.8416 * linked)).toBe(1_837_986);
});
