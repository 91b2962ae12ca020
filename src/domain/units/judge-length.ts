import type { UnitSystem } from '../model.ts';
import { formatLength } from './format-length.ts';
import { FOOT, type Length, METRE, SIXTEENTH } from './length.ts';
import { type LengthUnit, type Reading, type Refusal, UNIT_LENGTHS } from './read-length.ts';

/** What is plausible for a field, both ends allowed. */
export interface LengthRange {
  readonly min: Length;
  readonly max: Length;
}

const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = {
  ft: 'feet',
  in: 'inches',
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
};
/** Readings to offer where the typed one is not plausible, the likeliest slip first. */
const OTHER_UNITS: Readonly<Record<LengthUnit, readonly LengthUnit[]>> = {
  ft: ['mm', 'in', 'm'],
  in: ['mm', 'ft', 'm'],
  mm: ['m', 'ft', 'in'],
  cm: ['mm', 'm'],
  m: ['mm', 'ft'],
};
const KILOMETRE: Length = 1000 * METRE;
const MILE: Length = 5280 * FOOT;

/** Refuses a length that is not plausible, and offers the same figure in the unit that makes it so. */
export function refuseImplausible(read: Reading, units: UnitSystem, range: LengthRange): Refusal | undefined {
  const length = Math.round(read.length);
  if (length >= range.min && length <= range.max) return undefined;
  if (length < 0 && range.min >= 0) return refuseNegative(read, units);
  const problem = `${sayTyped(read, units)} is ${sayTooFar(length, units, range)}.`;
  const other = isFarOff(length, range) ? otherReading(read, range) : undefined;
  if (!other) {
    const ends = `from ${formatLength(range.min, units)} to ${formatLength(range.max, units)}`;
    return { problem, remedy: `Give a length ${ends}.` };
  }
  const suggestion = `${other.digits} ${other.unit}`;
  const equals = `${sayNumber(other.value)} ${other.unit} = ${sayLarge(other.length, units)}.`;
  return { problem, remedy: `${equals} If you meant ${UNIT_WORDS[other.unit]}, write ${suggestion}.`, suggestion };
}

/**
 * A question about decimal feet that are no whole sixteenth: they may be feet and inches typed with a point.
 * For 10.6 ft: `10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`
 */
export function questionDecimalFeet(read: Reading): { readonly note?: string; readonly suggestion?: string } {
  const { figure } = read;
  const sixteenths = read.length / SIXTEENTH;
  const isWhole = Math.abs(sixteenths - Math.round(sixteenths)) < 1e-6;
  if (figure?.unit !== 'ft' || isWhole) return {};
  const note = `${figure.digits} ft is ${formatLength(Math.round(sixteenths) * SIXTEENTH, 'ft-in')}.`;
  const inches = Number(figure.digits.split('.')[1]);
  if (inches >= 12 || figure.value < 0) return { note };
  const suggestion = `${Math.floor(figure.value)}'-${inches}"`;
  return { note: `${note} Did you mean ${suggestion}?`, suggestion };
}

function refuseNegative(read: Reading, units: UnitSystem): Refusal {
  const length = Math.abs(Math.round(read.length));
  const suggestion = read.figure ? `${read.figure.digits} ${read.figure.unit}` : formatLength(length, units);
  const problem = `${sayTyped(read, units)} is negative; a length here is not.`;
  return { problem, remedy: `Did you mean ${suggestion}?`, suggestion };
}

function sayTyped({ figure, length }: Reading, units: UnitSystem): string {
  return figure ? `${sayNumber(figure.value)} ${figure.unit}` : formatLength(Math.round(length), units);
}

function sayTooFar(length: Length, units: UnitSystem, range: LengthRange): string {
  if (length < range.min) return `less than ${formatLength(range.min, units)}, the least here`;
  if (length < KILOMETRE) return `more than ${formatLength(range.max, units)}, the most here`;
  return units === 'ft-in' ? `${sayNumber(length / MILE, 1)} miles` : `${sayNumber(length / KILOMETRE, 1)} km`;
}

/** A little past the range is a wrong figure; far past it, a right figure in another unit. */
function isFarOff(length: Length, range: LengthRange): boolean {
  return length > 2 * range.max || length < range.min / 2;
}

function otherReading({ figure }: Reading, range: LengthRange) {
  if (!figure) return undefined;
  const { value, digits } = figure;
  return OTHER_UNITS[figure.unit]
    .map((unit) => ({ unit, value, digits, length: value * UNIT_LENGTHS[unit] }))
    .find(({ length }) => length >= range.min && length <= range.max);
}

/** In the project's own large unit, so that two readings can be told apart at a glance. */
function sayLarge(length: number, units: UnitSystem): string {
  return units === 'ft-in' ? `${(length / FOOT).toFixed(1)} ft` : `${(length / METRE).toFixed(3)} m`;
}

function sayNumber(value: number, digits = 4): string {
  return new Intl.NumberFormat('en-US', { maximumFractionDigits: digits }).format(value);
}
