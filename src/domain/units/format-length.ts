import type { UnitSystem } from '../model.ts';
import { FOOT, INCH, type Length, SIXTEENTH, toMm, UNITS_PER_MM } from './length.ts';

/** Stands before a figure that had to be rounded to be shown. */
export const NEARLY = '≈';

/**
 * A length for people to read: feet, inches and sixteenths, or metres to the millimetre, always with their marks.
 * A length that is not a whole sixteenth (or millimetre) is shown to the nearest one behind `≈`; halves go away from 0.
 * `formatLength(304927, 'ft-in') = '12\'-6 1/16"'`, `formatLength(304800, 'metric') = '3.810 m'`.
 */
export function formatLength(length: Length, units: UnitSystem): string {
  const step = units === 'ft-in' ? SIXTEENTH : UNITS_PER_MM;
  const size = Math.abs(length);
  const steps = Math.round(size / step);
  const isWhole = steps * step === size;
  const shown = units === 'ft-in' ? feetAndInches(steps * SIXTEENTH) : metres(steps);
  const sign = length < 0 && steps > 0 ? '-' : '';
  return `${isWhole ? '' : NEARLY}${sign}${shown}`;
}

/**
 * A length for a field that a person may send back untouched: whatever it holds, `parseLength` reads it as the same
 * length. Whole sixteenths are written as `formatLength` does, everything else in millimetres to 0.0125.
 * `writeLength(258470, 'ft-in') = '3230.875 mm'`.
 */
export function writeLength(length: Length, units: UnitSystem): string {
  const isWholeSixteenth = length % SIXTEENTH === 0;
  return units === 'ft-in' && isWholeSixteenth ? formatLength(length, units) : `${toMm(length)} mm`;
}

function feetAndInches(length: Length): string {
  const feet = Math.floor(length / FOOT);
  const inches = Math.floor((length % FOOT) / INCH);
  const fraction = sixteenths((length % INCH) / SIXTEENTH);
  if (feet > 0) return `${feet}'-${inches}${fraction && ` ${fraction}`}"`;
  if (inches > 0) return `${inches}${fraction && ` ${fraction}`}"`;
  return `${fraction || '0'}"`;
}

function sixteenths(count: number): string {
  if (count === 0) return '';
  let [over, under] = [count, 16];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${over}/${under}`;
}

function metres(millimetres: number): string {
  const whole = Math.floor(millimetres / 1000);
  return `${whole}.${String(millimetres % 1000).padStart(3, '0')} m`;
}
