import { FOOT, INCH, type Length, METRE } from '../units/length.ts';

const UNITS: ReadonlyMap<string, Length> = new Map([
  ...['m', 'metre', 'metres', 'meter', 'meters'].map((word) => [word, METRE] as const),
  ...['ft', 'foot', 'feet', 'lf', "'"].map((word) => [word, FOOT] as const),
  ...['in', 'inch', 'inches', '"'].map((word) => [word, INCH] as const),
  ['mm', METRE / 1000],
  ['cm', METRE / 100],
  ['km', METRE * 1000],
  ['yd', 3 * FOOT],
]);

const COUNT_AND_WORD = /^(?:per\s+|\/\s*)?(\d+(?:,\d{3})*(?:\.\d+)?)?\s*([a-z]+|['"])\.?$/;

/**
 * The length that an activity's unit stands for, or null for a unit that counts pieces. A length unit may carry a count
 * before it; any other word counts pieces.
 *
 * Example: `lengthUnit('100 ft')` is 100 feet, `lengthUnit('10m')` 10 metres, `lengthUnit('each')` null.
 */
export function lengthUnit(unit: string): Length | null {
  const [, count, word] = COUNT_AND_WORD.exec(unit.trim().toLowerCase()) ?? [];
  const one = word === undefined ? undefined : UNITS.get(word);
  const times = count === undefined ? 1 : Number(count.replaceAll(',', ''));
  return one !== undefined && times > 0 ? times * one : null;
}
