import type { UnitSystem } from '../../domain/model.ts';
import { writeMoney } from '../../domain/units/money.ts';
import { writeMm } from '../lists/write-mm.ts';
import type { EntryOf } from './entries.ts';

/** A value of the document as the text of its field: read back untouched it is the same value. */
export function writeEntry(
  { reading }: EntryOf,
  value: unknown,
  project: { readonly units: UnitSystem; readonly currency: string },
): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) {
    const each = value.map((one: unknown) => writeEntry({ path: '', reading: singular(reading) }, one, project));
    return each.join(reading.kind === 'lines' ? '\n' : '; ');
  }
  if (typeof value !== 'number') return reading.kind === 'tick' ? (value === true ? 'yes' : '') : String(value);
  switch (reading.kind) {
    case 'length':
      return writeMm(value, project.units);
    case 'weight':
      return `${value} kg`;
    case 'weight-per-length':
      return `${value} kg/m`;
    case 'torque':
      return `${value} N·m`;
    case 'money':
      return writeMoney(value, project.currency);
    default:
      return String(value);
  }
}

function singular(reading: EntryOf['reading']): EntryOf['reading'] {
  if (reading.kind === 'lengths') return { kind: 'length', range: reading.range };
  return reading.kind === 'lines' ? { kind: 'text' } : reading;
}

/** What stands at a path of a thing; undefined where nothing does. */
export function valueAt(thing: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
      thing,
    );
}
