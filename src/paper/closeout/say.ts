import type { UnitSystem } from '../../domain/model.ts';
import type { Stamp, TorqueReading } from '../../domain/quality/record.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import type { Length } from '../../domain/units/length.ts';
import { formatWeight } from '../../domain/units/quantities.ts';
import { when } from './when.ts';

/** How a sheet writes what it is handed: lengths in the job's unit, times in its zone, what is unknown as a dash. */
export interface Say {
  readonly length: (length: Length | null) => string;
  readonly weight: (kg: number) => string;
  readonly time: (at: string | null) => string;
  readonly by: (stamp: Stamp | null) => string;
  readonly at: (stamp: Stamp | null) => string;
}

export const NONE = '–';

export function sayer(units: UnitSystem, timeZone: string | null): Say {
  const time = (at: string | null) => (at === null ? NONE : when(at, timeZone));
  return {
    length: (length) => (length === null ? NONE : formatLength(length, units)),
    weight: (kg) => formatWeight(kg, units),
    time,
    by: (stamp) => stamp?.by.name ?? NONE,
    at: (stamp) => time(stamp?.at ?? null),
  };
}

/** A torque as it was written: `15 lbf·ft`. */
export function writtenTorque({ value, unit }: Pick<TorqueReading, 'value' | 'unit'>): string {
  return `${value} ${unit === 'Nm' ? 'N·m' : 'lbf·ft'}`;
}

/** A number to so many decimals, or a dash. */
export function decimals(value: number | null, digits: number): string {
  return value === null ? NONE : value.toFixed(digits);
}

export function orNone(text: string | null | undefined): string {
  return text === null || text === undefined || text === '' ? NONE : text;
}
