/** A level, or what belongs to none (`id` null). */
export interface Place {
  readonly id: string | null;
  readonly name: string;
}

/** In the address, what belongs to no level. */
export const NO_LEVEL = '-';

/** 2,443.6: hours in a table, to a tenth. */
export function hoursFigure(hours: number): string {
  return TENTHS.format(hours);
}

const TENTHS = new Intl.NumberFormat('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 });
