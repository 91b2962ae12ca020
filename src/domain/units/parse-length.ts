import type { UnitSystem } from '../model.ts';
import { type LengthRange, questionDecimalFeet, refuseImplausible } from './judge-length.ts';
import { type Length, METRE, UNITS_PER_MM } from './length.ts';
import { plainLengthText } from './plain-length-text.ts';
import { type Refusal, readLength } from './read-length.ts';

export type { LengthRange } from './judge-length.ts';

export type ParsedLength =
  /** `note` asks about a length that is taken as typed; `suggestion` is what may have been meant instead. */
  | { readonly ok: true; readonly length: Length; readonly note?: string; readonly suggestion?: string }
  | ({ readonly ok: false } & Refusal);

const KILOMETRE: Length = 1000 * METRE;
/** A distance along a run. */
export const DISTANCE: LengthRange = { min: 0, max: KILOMETRE };
/** Anything that must exist: no leg, section or box is thinner than 1 mm. */
export const SIZE: LengthRange = { min: UNITS_PER_MM, max: KILOMETRE };
/** A leg between corners: under 100 mm, or past 300 m, the figure was meant in another unit. */
export const LEG: LengthRange = { min: 100 * UNITS_PER_MM, max: 300 * METRE };
/** A place in the building, either side of the origin. */
export const COORDINATE: LengthRange = { min: -26 * KILOMETRE, max: 26 * KILOMETRE };

/**
 * Reads a length in any form that the project takes: `12'-6 1/2"`, `12' 6.5"`, `12.5 ft`, `150 in`, `3810 mm`, `3.81 m`.
 * A bare number is feet or millimetres, by the project's units. Outside `range` it is refused and, where another unit
 * makes it plausible, that reading is offered. The result is exact for sixteenths, else rounded once to 1/80 mm.
 * `parseLength('12\'-6 1/2"', 'ft-in') = { ok: true, length: 305816 }`.
 */
export function parseLength(text: string, units: UnitSystem, range: LengthRange = DISTANCE): ParsedLength {
  const read = readLength(plainLengthText(text), units);
  if ('problem' in read) return { ok: false, ...read };
  const refusal = refuseImplausible(read, units, range);
  if (refusal) return { ok: false, ...refusal };
  return { ok: true, length: Math.round(read.length), ...questionDecimalFeet(read) };
}
