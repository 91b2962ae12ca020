/**
 * A length: an integer count of 1/80 mm. A whole millimetre is 80 and a sixteenth of an inch exactly 127,
 * so feet-and-sixteenths and millimetres are both exact, and a kilometre still fits in 32 bits.
 */
export type Length = number;

export const UNITS_PER_MM = 80;
export const SIXTEENTH: Length = 127;
export const INCH: Length = 16 * SIXTEENTH;
export const FOOT: Length = 12 * INCH;
export const METRE: Length = 1000 * UNITS_PER_MM;

/** Millimetres (as in the API and the job document) to a length; rounds once, to the nearest 1/80 mm. `fromMm(3048) = 243840`. */
export function fromMm(mm: number): Length {
  return Math.round(mm * UNITS_PER_MM);
}

/** A length to decimal millimetres, exact to 0.0125 mm. `toMm(127) = 1.5875`. */
export function toMm(length: Length): number {
  return Math.round((length / UNITS_PER_MM) * 10_000) / 10_000;
}

/** A length in metres, for formulas per metre. `toMetres(243840) = 3.048`. */
export function toMetres(length: Length): number {
  return length / METRE;
}
