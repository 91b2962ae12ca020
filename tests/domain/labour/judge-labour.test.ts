import { expect, test } from 'vitest';
import { judgeLabour } from '../../../src/domain/labour/judge-labour.ts';
import { ACTIVITIES } from '../../../src/domain/labour/result.ts';
import type { LabourActivity, Level } from '../../../src/domain/model.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { aJob, aLabourBook, aLayout, aLevel, anActivity, aRun, feet } from '../../support/job.ts';

const byLength: readonly string[] = ['lay-out', 'slot-closure'];
const complete = ACTIVITIES.map((id) => anActivity(id, 1, byLength.includes(id) ? { unit: '100 ft' } : {}));
const height = [{ over: feet(12), percent: 10 }];
const factors = { height, congestion: { open: 0, normal: 0, tight: 0 }, storeyPercentEach: 0, livePercent: 0 };

function judged(activities: readonly LabourActivity[], level: Level = aLevel()) {
  const job = aJob({ levels: [level], labourBook: aLabourBook({ activities, factors }) });
  const layouts = [aLayout(aRun(), [10, 10])];
  return judgeLabour(job, layouts, takeOff(job, layouts));
}

test('a book that covers all the work raises nothing', () => {
  expect(judged(complete)).toEqual([]);
});

test('work that the book has no hours for is named, and work that does not occur is not', () => {
  const findings = judged(complete.filter(({ id }) => id !== 'test-joint' && id !== 'elbow'));
  expect(findings).toMatchObject([{ rule: 'labour.no-hours', severity: 'note' }]);
  expect(findings[0]?.message).toContain('test-joint');
  expect(findings[0]?.message).not.toContain('elbow');
});

test('a labour unit of 0 on work that is counted is a warning, in one length too, and on work that does not occur nothing', () => {
  const none = { low: 0, likely: 0, high: 0 };
  const zero = (id: string) => judged(complete.map((one) => (one.id === id ? { ...one, ...none } : one)));
  expect(zero('joint')).toMatchObject([{ rule: 'labour.zero', severity: 'warning' }]);
  expect(zero('joint')[0]?.message).toMatch(/gives 0 likely hours for joint.*enter its hours/);
  expect(zero('elbow')).toEqual([]);
  const bands = [{ upToA: null, upTo: feet(10), ...none }];
  expect(judged(complete.map((one) => (one.id === 'section' ? { ...one, bands } : one)))).toMatchObject([
    { rule: 'labour.zero' },
  ]);
});

const withUnit = (id: string, unit: string) =>
  judged(complete.map((activity) => (activity.id === id ? { ...activity, unit } : activity)));

test('a unit that may be read in another way is a warning: feet of joint, each of lay-out, ten pieces of tap-off', () => {
  expect(withUnit('joint', 'ft')).toMatchObject([{ rule: 'labour.unit', severity: 'warning' }]);
  expect(withUnit('lay-out', 'each')).toMatchObject([{ rule: 'labour.unit', severity: 'warning' }]);
  expect(withUnit('end-cap', '10 pieces')).toMatchObject([{ rule: 'labour.unit', severity: 'warning' }]);
  expect(withUnit('section', 'm')).toEqual([]);
});

test('a height factor without a mounting height is named', () => {
  const activities = complete.map((activity) => ({ ...activity, factors: ['height'] as const }));
  expect(judged(activities, aLevel({}, { mountingHeight: null }))).toMatchObject([{ rule: 'labour.height' }]);
  expect(judged(activities)).toEqual([]);
});

test('without a labour book there is nothing to say', () => {
  expect(judgeLabour(aJob(), [], [])).toEqual([]);
});
