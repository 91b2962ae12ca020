import { describe, expect, test } from 'vitest';
import { calibrationRemark, entriesWithToolSince } from '../../../src/domain/quality/calibration.ts';
import { daysBetween, isAfter, latest, siteDay } from '../../../src/domain/quality/instant.ts';
import { asked, clock, GOOD_TORQUE, IBE, kept, stepBody } from './cast.ts';

describe('a calibration', () => {
  test('is in date on its due day and over on the day after', () => {
    const tool = { id: 'T-07', due: '2026-05-12' };
    expect(calibrationRemark(tool, clock('17:00'), 'America/Chicago')).toBeNull();
    expect(calibrationRemark(tool, clock('00:10', '2026-05-13'), 'America/Chicago')).toMatchObject({
      args: { day: '2026-05-13', daysOver: 1 },
    });
  });

  test('a due day that nobody knows is told as unknown', () => {
    expect(calibrationRemark({ id: 'T-07', due: null }, clock('17:00'), null)).toEqual({
      code: 'tool.calibration-unknown',
      args: { id: 'T-07' },
    });
  });

  test('scenario T4: everything that a lapsed tool touched since it was last good is found again, whatever the entries claimed', () => {
    const made = (day: string, toolId: string) =>
      kept(asked('joint', clock('10:00', day), stepBody(2, { torque: { ...GOOD_TORQUE, toolId } })), IBE);
    const records = [
      made('2026-05-09', 'T-07'),
      made('2026-05-10', 'T-07'),
      made('2026-05-11', 'T-03'),
      made('2026-05-12', 'T-07'),
    ];
    expect(entriesWithToolSince(records, 'T-07', '2026-05-09', 'America/Chicago').map(({ at }) => at)).toEqual([
      clock('10:00', '2026-05-10'),
      clock('10:00', '2026-05-12'),
    ]);
  });
});

describe('moments and days', () => {
  test('moments are compared as moments, not as text', () => {
    expect(isAfter('2026-05-12T12:00:00Z', '2026-05-12T07:00:00-05:00')).toBe(false);
    expect(isAfter('2026-05-12T12:00:00.001Z', '2026-05-12T12:00:00Z')).toBe(true);
    expect(latest(null, null)).toBeNull();
    expect(latest('2026-05-12T12:00:00Z', '2026-05-12T08:00:00-05:00')).toBe('2026-05-12T08:00:00-05:00');
  });

  test('a day is that of the site, over midnight and over daylight saving', () => {
    expect(siteDay('2026-05-12T03:00:00Z', 'America/Chicago')).toBe('2026-05-11');
    expect(siteDay('2026-05-12T03:00:00Z', null)).toBe('2026-05-12');
    expect(daysBetween('2026-03-07', '2026-03-09')).toBe(2);
    expect(daysBetween('2026-05-12', '2026-05-09')).toBe(-3);
  });

  test('text that is no moment is a fault of ours', () => {
    expect(() => isAfter('yesterday', '2026-05-12T12:00:00Z')).toThrow('not a moment');
  });
});
