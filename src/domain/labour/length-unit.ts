import { FOOT, INCH, type Length, METRE } from '../units/length.ts';

const UNITS: Readonly<Record<string, Length>> = {
  m: METRE,
  metre: METRE,
  metres: METRE,
  meter: METRE,
  meters: METRE,
  mm: METRE / 1000,
  cm: METRE / 100,
  km: METRE * 1000,
  ft: FOOT,
  foot: FOOT,
  feet: FOOT,
  lf: FOOT,
  "'": FOOT,
  in: INCH,
  inch: INCH,
  inches: INCH,
  '"': INCH,
  yd: 3 * FOOT,
};

/**
 * The length that an activity's unit stands for, or null for a unit that counts pieces. A length unit may carry a count
 * before it; any other word counts pieces.
 *
 * Example: `lengthUnit('100 ft')` is 100 feet, `lengthUnit('10m')` 10 metres, `lengthUnit('each')` null.
 */
export function lengthUnit(unit: string): Length | null {
  const match = /^(\d+(?:\.\d+)?)?\s*([a-z]+|['"])\.?$/.exec(unit.trim().toLowerCase());
  const one = match?.[2] === undefined ? undefined : UNITS[match[2]];
  const count = Number(match?.[1] ?? 1);
  return one !== undefined && count > 0 ? count * one : null;
}
