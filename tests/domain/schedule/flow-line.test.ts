import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toModel } from '../../../src/document/to-model.ts';
import { figures } from '../../../src/domain/figures.ts';
import type { Activity, LineActivity } from '../../../src/domain/labour/result.ts';
import { crewDays } from '../../../src/domain/schedule/crew-days.ts';
import { continuousPlan, earliestPlan, type FlowPlan } from '../../../src/domain/schedule/flow-line.ts';
import { type CrewSchedule, planCrews } from '../../../src/domain/schedule/plan-crews.ts';
import { weekLoad } from '../../../src/domain/schedule/week-load.ts';
import { workingDate, workingDates } from '../../../src/domain/schedule/working-calendar.ts';
import { scenarioT2 } from '../../support/scenarios.ts';

// Scenario T5: four floors; hangers 6 days a floor, sections and joints 5, tap-offs 7, tests 3; one day between crews.
const crews = (
  [
    ['hangers', 6],
    ['sections', 5],
    ['tap-offs', 7],
    ['tests', 3],
  ] as const
).map(([name, days]) => ({ name, days: [days, days, days, days] }));
const starts = ({ crews }: FlowPlan) => crews.map(({ stays }) => stays[0]?.start);
const idle = ({ crews }: FlowPlan) => crews.map((crew) => crew.idle);

describe('four crews over four floors', () => {
  test('without standing they start on days 0, 10, 16 and 36 and finish on 48', () => {
    const plan = continuousPlan({ crews, buffer: 1 });
    expect(starts(plan)).toEqual([0, 10, 16, 36]);
    expect(plan.finish).toBe(48);
    expect(plan.idle).toBe(0);
  });

  test('as soon as each can they finish on 45, the second having stood 3 days and the fourth 12', () => {
    const plan = earliestPlan({ crews, buffer: 1 });
    expect(plan.finish).toBe(45);
    expect(idle(plan)).toEqual([0, 3, 0, 12]);
  });

  test('floors released on days 10, 12 and 18 cost 52 days without standing, and 48 with the crews standing 4, 7, 3 and 15', () => {
    const released = [0, 10, 12, 18];
    const steady = continuousPlan({ crews, buffer: 1, released });
    expect(starts(steady)).toEqual([4, 14, 20, 40]);
    expect(steady.finish).toBe(52);
    const early = earliestPlan({ crews, buffer: 1, released });
    expect(early.finish).toBe(48);
    expect(idle(early)).toEqual([4, 7, 3, 15]);
  });
});

const inputs = fc.integer({ min: 1, max: 6 }).chain((floors) =>
  fc.record({
    crews: fc.array(
      fc.record({
        name: fc.string(),
        days: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: floors, maxLength: floors }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    buffer: fc.integer({ min: 0, max: 3 }),
    released: fc.array(fc.integer({ min: 0, max: 20 }), { minLength: floors, maxLength: floors }),
  }),
);

test('no crew is on a floor before it is free and released, and as soon as possible is never later', () => {
  fc.assert(
    fc.property(inputs, (input) => {
      const steady = continuousPlan(input);
      const early = earliestPlan(input);
      for (const { crews } of [steady, early]) {
        crews.forEach(({ stays }, k) => {
          stays.forEach(({ start }, floor) => {
            expect(start).toBeGreaterThanOrEqual(input.released[floor]!);
            if (k > 0) expect(start).toBeGreaterThanOrEqual(crews[k - 1]!.stays[floor]!.finish + input.buffer);
            if (floor > 0) expect(start).toBeGreaterThanOrEqual(stays[floor - 1]!.finish);
          });
        });
      }
      expect(steady.idle).toBe(0);
      expect(early.finish).toBeLessThanOrEqual(steady.finish);
    }),
    { numRuns: 500, seed: 5 },
  );
});

test('96 labour hours take two heads six days, and an hour more a seventh', () => {
  expect(crewDays(96, 2, 8)).toBe(6);
  expect(crewDays(97, 2, 8)).toBe(7);
  expect(crewDays(0, 2, 8)).toBe(0);
  expect(() => crewDays(96, 0, 8)).toThrow(RangeError);
});

test('working days step over weekends and holidays', () => {
  const calendar = { weekdays: [1, 2, 3, 4, 5], holidays: ['2026-12-25', '2027-01-01'] };
  expect(workingDate('2026-12-24', 0, calendar)).toBe('2026-12-24');
  expect(workingDate('2026-12-24', 1, calendar)).toBe('2026-12-28');
  expect(workingDate('2026-12-24', 5, calendar)).toBe('2027-01-04');
  expect(workingDate('2026-12-26', 0, calendar)).toBe('2026-12-28');
  expect(() => workingDate('2026-12-24', 0, { ...calendar, weekdays: [] })).toThrow(RangeError);
});

test('the weeks of a plan hold all its hours and name the most heads and lifts at once', () => {
  const plan = continuousPlan({ crews, buffer: 1 });
  const dates = workingDates('2026-05-04', 48, { weekdays: [1, 2, 3, 4, 5], holidays: [] });
  const heads = [2, 3, 4, 1];
  const loads = heads.map((n, crew) => ({ heads: n, lifts: [1, 2, 2, undefined][crew], hours: [10, 20, 30, 40] }));
  const weeks = weekLoad(plan, loads, { hoursPerDay: 8, dates });
  expect(weeks).toHaveLength(10);
  expect(weeks[0]?.from).toBe('2026-05-04');
  expect(weeks.reduce((sum, { paidHours }) => sum + paidHours, 0)).toBe(4 * 8 * (6 * 2 + 5 * 3 + 7 * 4 + 3 * 1));
  expect(weeks.reduce((sum, { labourHours }) => sum + labourHours, 0)).toBeCloseTo(4 * 100, 9);
  // Day 16 to 24: hangers 2, sections 3 and tap-offs 4 are all on site, from 1, 2 and 2 lifts.
  expect(Math.max(...weeks.map(({ peakHeads }) => peakHeads))).toBe(9);
  expect(Math.max(...weeks.map(({ peakLifts }) => peakLifts ?? 0))).toBe(5);
  const unsaid = loads.map(({ lifts: _lifts, ...load }) => load);
  expect(weekLoad(plan, unsaid, { hoursPerDay: 8, dates })[0]?.peakLifts).toBeNull();
});

test('a week is one of the calendar, short where it has a holiday or the plan begins in it', () => {
  const plan = continuousPlan({ crews: [{ name: 'one', days: [7] }], buffer: 0 });
  const dates = workingDates('2026-12-23', 7, { weekdays: [1, 2, 3, 4, 5], holidays: ['2026-12-25', '2027-01-01'] });
  const weeks = weekLoad(plan, [{ heads: 1, hours: [56] }], { hoursPerDay: 8, dates });
  // Wednesday and Thursday; Monday to Thursday; Monday.
  expect(weeks.map(({ from, paidHours }) => [from, paidHours])).toEqual([
    ['2026-12-21', 16],
    ['2026-12-28', 32],
    ['2027-01-04', 8],
  ]);
});

test('crews planned from labour lines: 12 runs a floor, hours nobody has a crew for are named', () => {
  const { job } = { job: toModel(scenarioT2()) };
  const { labour } = figures(job);
  if (labour === null) throw new Error('the scenario has a labour book');
  const crew = (name: string, heads: number, activities: readonly Activity[]) => ({ name, heads, activities });
  const schedule = planCrews(
    {
      start: '2026-12-24',
      hoursPerDay: 8,
      calendar: { weekdays: [1, 2, 3, 4, 5], holidays: ['2026-12-25'] },
      bufferDays: 1,
      crews: [crew('hangers', 2, ['lay-out', 'support']), crew('sections', 3, ['section', 'joint'])],
      released: [{ level: 'F2', date: '2027-01-08' }],
    },
    job.levels,
    labour.lines,
  );
  const ofSupports = (level: string) =>
    labour.lines
      .filter((line) => line.level === level && (line.activity === 'support' || line.activity === 'lay-out'))
      .reduce((sum, line) => sum + line.hours, 0);
  ['F1', 'F2', 'F3', 'F4'].forEach((level, i) => {
    expect(schedule.hours[0]?.[i]).toBeCloseTo(ofSupports(level), 9);
  });
  expect(schedule.days[0]?.[0]).toBe(Math.ceil(ofSupports('F1') / 16));
  // The 24th and eleven working days after the holiday: the 8th of January is day 10 (28 to 31 are 1 to 4, New Year is worked here).
  expect(schedule.earliest.crews[0]?.stays[1]?.start).toBe(Math.max(10, schedule.days[0]?.[0] ?? 0));
  expect(schedule.dates[schedule.earliest.crews[0]?.stays[1]?.start ?? 0]).toBe('2027-01-08');
  const total = schedule.hours.flat().reduce((sum, h) => sum + h, 0);
  const left = schedule.unplaced.reduce((sum, { hours }) => sum + hours, 0);
  expect(total + left).toBeCloseTo(labour.range.likely, 6);
  expect(schedule.unplaced.map(({ activity }) => activity)).toContain('tap');
});

test('hours added by hand on a level are a crew’s where the plan says so, and those of no level stay named', () => {
  const extras = [
    { item: 'Hoist (invented)', level: 'F2', quantity: 2, unit: 'each', hours: 8 },
    { item: 'Meetings (invented)', quantity: 1, unit: 'each', hours: 5 },
  ];
  const job = toModel({ ...scenarioT2(), extras });
  const { labour } = figures(job);
  const manned = (activities: readonly LineActivity[]) =>
    planCrews(
      {
        start: '2026-12-07',
        hoursPerDay: 8,
        calendar: { weekdays: [1, 2, 3, 4, 5], holidays: [] },
        bufferDays: 0,
        crews: [{ name: 'hands', heads: 2, activities }],
        released: [],
      },
      job.levels,
      labour!.lines,
    );
  const byHand = (schedule: CrewSchedule) => schedule.unplaced.find(({ activity }) => activity === 'extra')?.hours;
  // The book adds its non-productive time to hours by hand as to all others.
  const paid = 1 + job.labourBook!.nonProductivePercent / 100;
  expect(byHand(manned(['punch']))).toBeCloseTo((16 + 5) * paid, 9);
  expect(byHand(manned(['extra']))).toBeCloseTo(5 * paid, 9);
  expect(manned(['extra']).hours).toEqual([[0, expect.closeTo(16 * paid, 9), 0, 0]]);
  expect(manned(['extra']).days[0]).toEqual([0, Math.ceil((16 * paid) / 16), 0, 0]);
});
