import { describe, expect, test } from 'vitest';
import { parseHours, parseMegohms, parseTorque, parseWeight } from '../../../src/domain/units/parse-quantity.ts';
import { formatHours, formatTorque, formatWeight } from '../../../src/domain/units/quantities.ts';

test('weights and torques are shown in the units of the job', () => {
  expect(formatWeight(64.41, 'ft-in')).toBe('142.0 lb');
  expect(formatWeight(64.41, 'metric')).toBe('64.4 kg');
  expect(formatTorque(27.12, 'ft-in')).toBe('20.0 lbf·ft');
  expect(formatTorque(27.12, 'metric')).toBe('27.1 N·m');
  expect(formatHours(2424.04)).toBe('2,424.04 h');
});

describe('quantities as they are typed', () => {
  test.each([
    ['20 lb', 9.0718474],
    ['20 lbs', 9.0718474],
    ['1,000 kg', 1000],
    ['3,5 kg', 3.5],
    ['3', 3],
  ])('weight %s', (text, kg) => {
    expect(parseWeight(text)).toEqual({ ok: true, value: expect.closeTo(kg, 9) });
  });

  test.each(['20 lbf·ft', '20 ft-lb', '20 lb ft', '240 lbf·in', '27.116359 N·m'])('torque %s', (text) => {
    expect(parseTorque(text)).toEqual({ ok: true, value: expect.closeTo(27.116359, 6) });
  });

  test('gigohms are turned into megohms, and said', () => {
    expect(parseMegohms('0.95 GΩ')).toEqual({ ok: true, value: 950, note: '0.95 GΩ = 950 MΩ.' });
    expect(parseMegohms('950 MΩ')).toEqual({ ok: true, value: 950 });
    expect(parseMegohms('950 Mohm')).toEqual({ ok: true, value: 950 });
    expect(parseMegohms('500 kΩ')).toEqual({ ok: true, value: 0.5, note: '500 kΩ = 0.5 MΩ.' });
  });

  test('milliohms are not megohms', () => {
    expect(parseMegohms('950 mΩ')).toMatchObject({ ok: false });
  });

  test.each([
    ['7.5', 7.5],
    ['7:30', 7.5],
    ['7 h 30', 7.5],
    ['7h30m', 7.5],
    ['90 min', 1.5],
    ['8 hrs', 8],
  ])('hours %s', (text, hours) => {
    expect(parseHours(text)).toEqual({ ok: true, value: expect.closeTo(hours, 12) });
  });

  test.each(['', 'a lot', '-5', '5 parsecs', '7:75'])('"%s" is refused', (text) => {
    expect(parseWeight(text)).toMatchObject({ ok: false });
    expect(parseHours(text)).toMatchObject({ ok: false });
  });
});
