import type { UnitSystem } from '../model.ts';
import { formatLength } from '../units/format-length.ts';
import type { Length } from '../units/length.ts';

/** Writes a length as the project shows it. */
export type Say = (length: Length) => string;

export function sayIn(units: UnitSystem): Say {
  return (length) => formatLength(Math.round(length), units);
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
