import type { FastifyRequest } from 'fastify';
import type { UnitSystem } from '../../../domain/model.ts';
import { fromWallTime } from '../../../domain/quality/wall-time.ts';
import { type Length, toMm } from '../../../domain/units/length.ts';
import { type LengthRange, parseLength } from '../../../domain/units/parse-length.ts';
import { entered, enteredAll } from '../form.ts';

/** The fields of a posted form of the floor, read one by one; what is wrong with them is gathered, to be told all at once. */
export interface FieldEntries {
  readonly faults: ReadonlyMap<string, string>;
  readonly text: (name: string) => string;
  readonly all: (name: string) => readonly string[];
  readonly ticked: (name: string) => boolean;
  /** Text that may stay empty: null then. */
  readonly optional: (name: string, most?: number) => string | null;
  /** Text that must be there; `remedy` says what to write. */
  readonly needed: (name: string, remedy: string, most?: number) => string;
  readonly figure: (name: string, remedy: string) => number | null;
  readonly day: (name: string, remedy: string) => string;
  readonly moment: (name: string, zone: string | null, remedy: string) => string;
  /** A length in mm; null when the field is empty. */
  readonly lengthMm: (name: string, units: UnitSystem, range?: LengthRange) => number | null;
  readonly length: (name: string, units: UnitSystem, range?: LengthRange) => Length | null;
  readonly fault: (name: string, words: string) => void;
}

const MOST_TEXT = 200;
export const MOST_NOTE = 2000;

export function fieldEntries(request: FastifyRequest): FieldEntries {
  const fields = entered(request);
  const faults = new Map<string, string>();
  const fault = (name: string, words: string) => {
    if (!faults.has(name)) faults.set(name, words);
  };
  const all = (name: string) => enteredAll(request, name);
  const text = (name: string) => clean(fields[name] ?? all(name)[0] ?? '');
  const optional = (name: string, most = MOST_TEXT) => {
    const value = text(name);
    if (value.length > most) fault(name, `This is ${value.length} signs long; ${most} are kept. Shorten it.`);
    return value === '' ? null : value;
  };
  const needed = (name: string, remedy: string, most = MOST_TEXT) => {
    const value = optional(name, most);
    if (value === null) fault(name, remedy);
    return value ?? '';
  };
  const length = (name: string, units: UnitSystem, range?: LengthRange) => {
    const value = text(name);
    if (value === '') return null;
    const read = parseLength(value, units, range);
    if (read.ok) return read.length;
    fault(name, `${read.problem} ${read.remedy}`);
    return null;
  };
  return {
    faults,
    text,
    all,
    fault,
    optional,
    needed,
    length,
    ticked: (name) => all(name).includes('yes'),
    figure: (name, remedy) => {
      const value = readFigure(text(name));
      if (value === null) fault(name, remedy);
      return value;
    },
    day: (name, remedy) => {
      const value = text(name);
      if (!isDay(value)) fault(name, remedy);
      return value;
    },
    moment: (name, zone, remedy) => {
      const at = fromWallTime(text(name), zone);
      if (at === null) fault(name, remedy);
      return at ?? '';
    },
    lengthMm: (name, units, range) => {
      const found = length(name, units, range);
      return found === null ? null : toMm(found);
    },
  };
}

/** "24", "24.5", "24,5" and "1,250"; null for anything else. */
export function readFigure(text: string): number | null {
  const plain = /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(text) ? text.replaceAll(',', '') : text.replace(',', '.');
  return /^-?(\d+(\.\d*)?|\.\d+)$/.test(plain) ? Number(plain) : null;
}

function isDay(text: string): boolean {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text);
}

/** Without what a database or a list could not hold: control characters but for ends of line, and halves of pairs. */
function clean(text: string): string {
  return text
    .replaceAll('\r\n', '\n')
    .replace(/[^\P{Cc}\n]/gu, ' ')
    .replace(/\p{Cs}/gu, '')
    .trim();
}
