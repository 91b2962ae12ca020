import { minorDigits } from '../../../domain/units/money.ts';

/** What every sheet of a bid's workbook stands on. */
export interface Frame {
  /** As it stands above each table: job, design, date. */
  readonly title: string;
  readonly currency: string;
}

export function majorOf({ currency }: Frame): (minor: number) => number {
  const scale = 10 ** minorDigits(currency);
  return (minor) => minor / scale;
}

/** Number format of an amount. */
export function moneyFormat({ currency }: Frame): string {
  const digits = minorDigits(currency);
  return digits === 0 ? '#,##0' : `#,##0.${'0'.repeat(digits)}`;
}

/** A figure rounded as an amount is, as a formula. */
export function roundedTo({ currency }: Frame, formula: string): string {
  return `ROUND(${formula},${minorDigits(currency)})`;
}

/** An amount of one and its like keep what a minor unit would cut off. */
export const FIGURE = '#,##0.00####';
