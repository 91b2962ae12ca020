import { FOOT, type Length, METRE } from '../../units/length.ts';

/** Four significant figures without an exponent, thousands set apart: 1428.57 is "1,429", 0.4 is "0.4". */
export function figure(value: number): string {
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  return withDecimals(Math.min(Math.max(0, 3 - magnitude), 20)).format(value);
}

/** Made once for each number of decimals: making one takes far longer than writing with it. */
const formats = new Map<number, Intl.NumberFormat>();

function withDecimals(maximumFractionDigits: number): Intl.NumberFormat {
  const known = formats.get(maximumFractionDigits);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat('en-US', { maximumFractionDigits });
  formats.set(maximumFractionDigits, made);
  return made;
}

export function megohmText(megohm: number): string {
  return `${figure(megohm)} MΩ`;
}

/** Both units, because the rules are written in feet wherever the job is. */
export function lengthText(length: Length): string {
  return `${figure(length / FOOT)} ft (${figure(length / METRE)} m)`;
}
