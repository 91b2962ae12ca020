import type { Pair } from './pairs.ts';

export const RESISTANCE_UNITS = ['kΩ', 'MΩ', 'GΩ'] as const;
export type ResistanceUnit = (typeof RESISTANCE_UNITS)[number];

/**
 * What stands on the test sheet for one pair, never overwritten. A value keeps its comparator and its digits as written, so
 * that `> 5000`, `0.00`, a blank and *not measured* stay four different things.
 */
export type Reading =
  | {
      readonly kind: 'value';
      readonly comparator: '=' | '>';
      readonly value: number;
      readonly unit: ResistanceUnit;
      /** The digits as written: "0.00", "5000". */
      readonly written: string;
    }
  | { readonly kind: 'blank' }
  | { readonly kind: 'not-measured'; readonly reason: string | null }
  | { readonly kind: 'meter-fault'; readonly note: string | null };

export interface PairReading {
  readonly pair: Pair;
  readonly reading: Reading;
}

export type ReadingFault =
  | { readonly code: 'reading.over-range'; readonly args: { readonly written: string } }
  | { readonly code: 'reading.not-a-number'; readonly args: { readonly written: string } };

const MEGOHM = { kΩ: 0.001, MΩ: 1, GΩ: 1000 } as const;

/** A value in megohms. `0.95 GΩ` is 950. */
export function megohms({ value, unit }: { readonly value: number; readonly unit: ResistanceUnit }): number {
  return value * MEGOHM[unit];
}

/**
 * Reads what a person types into one box of the sheet: `1250`, `> 5000`, `0.95 GΩ`, `0.00`, nothing, `not measured`,
 * `meter fault`. The meter's over-range sign (`OL`) is the bound `> top range` where that is known, and else asks for it.
 */
export function parseReading(
  typed: string,
  unit: ResistanceUnit,
  topRange: { readonly value: number; readonly unit: ResistanceUnit } | null,
): { readonly ok: true; readonly reading: Reading } | { readonly ok: false; readonly fault: ReadingFault } {
  const written = typed.trim();
  if (written === '') return read({ kind: 'blank' });
  if (/^(?:not measured|n\/?m)$/i.test(written)) return read({ kind: 'not-measured', reason: null });
  if (/^meter fault$/i.test(written)) return read({ kind: 'meter-fault', note: null });
  if (/^(?:>\s*)?(?:o\.?l\.?|over\s*-?range|overload)$/i.test(written)) return overRange(written, topRange);
  const found = /^(>|=)?\s*(\d{1,3}(?:[, ]\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?)\s*([kMG])?(?:Ω|Ω|ohms?)?$/.exec(written);
  if (found === null) return { ok: false, fault: { code: 'reading.not-a-number', args: { written } } };
  const digits = (found[2] ?? '').replace(/[, ]/g, '');
  const ownUnit = unitOf(found[3]);
  return read({
    kind: 'value',
    comparator: found[1] === '>' ? '>' : '=',
    value: Number(digits),
    unit: ownUnit ?? unit,
    written: digits,
  });
}

function read(reading: Reading): { readonly ok: true; readonly reading: Reading } {
  return { ok: true, reading };
}

function overRange(written: string, topRange: Parameters<typeof parseReading>[2]): ReturnType<typeof parseReading> {
  if (topRange === null) return { ok: false, fault: { code: 'reading.over-range', args: { written } } };
  return read({
    kind: 'value',
    comparator: '>',
    value: topRange.value,
    unit: topRange.unit,
    written: String(topRange.value),
  });
}

function unitOf(prefix: string | undefined): ResistanceUnit | null {
  if (prefix === 'k') return 'kΩ';
  if (prefix === 'M') return 'MΩ';
  return prefix === 'G' ? 'GΩ' : null;
}
