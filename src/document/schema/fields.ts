import { z } from 'zod';

/** A length is kept as a 32-bit count of 1/80 mm, so no distance or coordinate may pass 26.8 km. */
export const MAX_COORDINATE_MM = 26_843_545;
/** Longer than any busway leg: past this, the figure was meant in another unit. */
export const MAX_LEG_MM = 1_000_000;
/** The finest length that is kept apart from nought: 1/80 mm. */
export const FINEST_MM = 0.0125;
/** 10 thousand million in a currency of two decimals: past any bid, and sums stay exact. */
export const MAX_MINOR = 1_000_000_000_000;

// One line of text: no control characters (a NUL cannot be stored by PostgreSQL) and no half of a surrogate pair.
const ONE_LINE = /^[^\p{Cc}\p{Cs}]*$/u;
const MANY_LINES = /^(?:[^\p{Cc}\p{Cs}]|[\n\r\t])*$/u;
// A label is also a key: it starts and ends with a visible character, so that two labels never differ by a blank.
const LABEL = /^[^\s\p{Cc}\p{Cs}](?:[^\p{Cc}\p{Cs}]*[^\s\p{Cc}\p{Cs}])?$/u;

/** The label of a level, type, run or tap: a key within the job. */
export const label = (what: string) => z.string().min(1).max(64).regex(LABEL).describe(what);
export const name = (what: string) => z.string().min(1).max(200).regex(ONE_LINE).describe(what);
/** One line that may be long. */
export const sentence = (what: string) => z.string().min(1).max(1_000).regex(ONE_LINE).describe(what);
export const text = (what: string) => z.string().max(200).regex(ONE_LINE).describe(what);
export const note = (what: string) => z.string().max(2000).regex(MANY_LINES).describe(what);

/** A day of the calendar. */
export const day = (what: string) => z.string().regex(z.regexes.date).describe(`${what}, a day as 2026-05-12`);

/** A distance along the run from the feed, mm. */
export const distanceMm = (what: string) => z.number().min(0).max(MAX_COORDINATE_MM).describe(what);
/** A size that must exist, mm. */
export const sizeMm = (what: string, min = FINEST_MM) => z.number().min(min).max(MAX_LEG_MM).describe(what);
/** A clearance or a limit that may be nought, mm. */
export const clearanceMm = (what: string) => z.number().min(0).max(MAX_LEG_MM).describe(what);
/** A place in the building, mm; may be negative. */
export const coordinateMm = (what: string) => z.number().min(-MAX_COORDINATE_MM).max(MAX_COORDINATE_MM).describe(what);

export const weightKg = (what: string) => z.number().min(0).max(100_000).describe(what);
export const amperes = (what: string) => z.number().gt(0).max(100_000).describe(what);
export const kiloamperes = (what: string) => z.number().gt(0).max(1_000).describe(what);
export const count = (what: string) => z.number().int().min(0).max(10_000).describe(what);
export const percent = (what: string) => z.number().min(0).max(1_000).describe(what);
export const money = (what: string) =>
  z.number().int().min(0).max(MAX_MINOR).describe(`${what}, in whole minor units of the project's currency`);

export const impedanceSchema = z
  .strictObject({
    r: z.number().min(0).max(10_000).describe('Resistance, ohm per km, as the sheet states it'),
    x: z.number().min(0).max(10_000).describe('Reactance, ohm per km, as the sheet states it'),
  })
  .describe('Resistance and reactance of one conductor, ohm per km');

export const side = (what: string) => z.enum(['left', 'right']).describe(what);
