import { expect, test } from 'vitest';
import { FOOT, INCH, toMetres } from '../../../src/domain/units/length.ts';
import {
  kgFromLb,
  kgPerMFromLbPerFt,
  lbFromKg,
  lbfFtFromNm,
  lbPerFtFromKgPerM,
  newtonsFromLbf,
  nmFromLbfFt,
  nmFromLbfIn,
  ohmPerKmFromOhmPerKft,
} from '../../../src/domain/units/quantities.ts';
import published from './published-units.json' with { type: 'json' };

const OURS: Readonly<Record<string, number>> = {
  '1 ft': toMetres(FOOT),
  '1 in': toMetres(INCH),
  '1 mile': toMetres(5280 * FOOT),
  '1 lb': kgFromLb(1),
  '1 lbf': newtonsFromLbf(1),
  '1 lbf-ft': nmFromLbfFt(1),
  '1 lbf-in': nmFromLbfIn(1),
  '1 lb/ft': kgPerMFromLbPerFt(1),
};

test.each(published.values)('$from is $expected $unit ($clause)', ({ from, expected }) => {
  expect(Math.abs((OURS[from] ?? Number.NaN) / expected - 1)).toBeLessThan(1e-7);
});

test('what is converted there and back is what it was', () => {
  expect(lbFromKg(kgFromLb(142))).toBeCloseTo(142, 12);
  expect(lbfFtFromNm(nmFromLbfFt(20))).toBeCloseTo(20, 12);
  expect(lbPerFtFromKgPerM(kgPerMFromLbPerFt(8.5))).toBeCloseTo(8.5, 12);
});

test('0.090 ohm per 1 000 ft is 0.2953 ohm per km, by the foot of 0.3048 m', () => {
  expect(ohmPerKmFromOhmPerKft(0.09)).toBeCloseTo(0.295276, 6);
});
