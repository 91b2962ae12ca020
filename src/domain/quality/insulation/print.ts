import { FOOT, type Length, METRE } from '../../units/length.ts';

/** Four significant figures without an exponent, thousands set apart: 1428.57 is "1,429", 0.4 is "0.4". */
export function figure(value: number): string {
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.max(0, 3 - magnitude);
  return value.toLocaleString('en-US', { maximumFractionDigits: Math.min(decimals, 20) });
}

export function megohmText(megohm: number): string {
  return `${figure(megohm)} MΩ`;
}

/** Both units, because the rules are written in feet wherever the job is. */
export function lengthText(length: Length): string {
  return `${figure(length / FOOT)} ft (${figure(length / METRE)} m)`;
}
