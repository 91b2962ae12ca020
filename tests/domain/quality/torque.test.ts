import { describe, expect, test } from 'vitest';
import { judgeTorque, statedTolerance, torqueNm } from '../../../src/domain/quality/torque.ts';

const wrench = { toolId: 'T-03', calibrationDue: '2026-11-30' };

describe('a torque against the sheet', () => {
  test('unit-5 (NIST SP 811, B.8): 1 lbf·ft is 1.355 817 948 N·m', () => {
    expect(torqueNm({ value: 1, unit: 'lbf-ft' })).toBeCloseTo(1.3558179483314, 9);
  });

  test.each([
    ['lower clamp, 20 N·m ± 10 %', 0.1],
    ['bolt to 20 N·m +/- 5%', 0.05],
    ['bolt to 20 N·m ±2 N·m', 0.1],
    ['bolt to 20 Nm ±7,5 %', 0.075],
    ['bolt to 14.75 lbf·ft ± 1 lbf·ft', 1.3558179483314 / 20],
  ])('the sheet states a tolerance in "%s"', (text, expected) => {
    expect(statedTolerance(text, 20)).toBeCloseTo(expected, 12);
  });

  test.each(['lower clamp centred, bolt tightened', 'bolt to 20 N·m', 'gap 1 ± 0.5 mm'])(
    '"%s" states none, and none is assumed',
    (text) => {
      expect(statedTolerance(text, 20)).toBeNull();
    },
  );

  test('a torque equal to its stated tolerance is within it', () => {
    expect(judgeTorque({ ...wrench, value: 18, unit: 'Nm' }, 'bolt ± 10 %', 20)).toMatchObject({
      verdict: 'within',
      leastNm: 18,
      greatestNm: 22,
    });
    expect(judgeTorque({ ...wrench, value: 17.9, unit: 'Nm' }, 'bolt ± 10 %', 20).verdict).toBe('outside');
  });

  test('20 written as lbf·ft for 20 N·m is 36 % over, which no tolerance judges', () => {
    const judged = judgeTorque({ ...wrench, value: 20, unit: 'lbf-ft' }, 'bolt tightened', 20);
    expect(judged.verdict).toBe('unjudged');
    expect(judged.appliedNm).toBeCloseTo(27.116, 3);
    expect(judged.differencePercent).toBeCloseTo(35.58, 2);
  });

  test('14.8 lbf·ft is 20 N·m but for the rounding of the conversion', () => {
    expect(judgeTorque({ ...wrench, value: 14.8, unit: 'lbf-ft' }, 'bolt tightened', 20).verdict).toBe('as-stated');
    expect(judgeTorque({ ...wrench, value: 15, unit: 'lbf-ft' }, 'bolt tightened', 20).verdict).toBe('unjudged');
  });

  test('a sheet that states no torque leaves it unjudged, never as stated', () => {
    expect(judgeTorque({ ...wrench, value: 20, unit: 'Nm' }, 'bolt tightened', null)).toMatchObject({
      verdict: 'unjudged',
      statedNm: null,
    });
  });
});
