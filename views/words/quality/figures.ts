import type { Instant } from '../../../src/domain/quality/instant.ts';
import { figure } from '../../../src/domain/quality/insulation/print.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { formatTorque } from '../../../src/domain/units/quantities.ts';
import { formatTime } from '../../components/time.tsx';
import type { Speech } from './told.ts';

export function long(length: Length, { units }: Speech): string {
  return formatLength(length, units);
}

export function time(at: Instant, { zone }: Speech): string {
  return formatTime(new Date(at), zone ?? 'UTC');
}

/** A torque in the unit of the sheet and in the wrench's. */
export function torque(nm: number): string {
  return `${formatTorque(nm, 'metric')} (${formatTorque(nm, 'ft-in')})`;
}

export function megohm(value: number): string {
  return `${figure(value)} MΩ`;
}

export function degrees(tempC: number): string {
  return `${tempC.toFixed(1)} °C`;
}

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  const [last, ...before] = [...words].reverse();
  if (last === undefined) return '';
  return before.length === 0 ? last : `${before.reverse().join(', ')} and ${last}`;
}

export function quoted(words: string): string {
  return `“${words}”`;
}

export function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
