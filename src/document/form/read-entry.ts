import type { UnitSystem } from '../../domain/model.ts';
import { toMm } from '../../domain/units/length.ts';
import { parseMoney } from '../../domain/units/money.ts';
import { type LengthRange, parseLength } from '../../domain/units/parse-length.ts';
import { parseTorque, parseWeight } from '../../domain/units/parse-quantity.ts';
import { kgPerMFromLbPerFt } from '../../domain/units/quantities.ts';
import type { Entered, EntryFault, EntryOf } from './entries.ts';

/** What the reading of a form gathers beside its values. */
export interface EntryLog {
  readonly units: UnitSystem;
  readonly currency: string;
  readonly faults: EntryFault[];
  readonly questions: EntryFault[];
}

export function newLog(project: { readonly units: UnitSystem; readonly currency: string }): EntryLog {
  return { units: project.units, currency: project.currency, faults: [], questions: [] };
}

/** The value of one entry; undefined where the field is empty, and where it cannot be read, which the log then tells. */
export function readEntry({ reading }: EntryOf, field: string, entered: Entered, log: EntryLog): unknown {
  const text = (entered[field] ?? '').trim();
  if (text === '') return undefined;
  switch (reading.kind) {
    case 'text':
      return text;
    case 'lines':
      return text.split(/\r\n|\r|\n/).flatMap((line) => (line.trim() === '' ? [] : [line.trim()]));
    case 'tick':
      return text === 'yes' ? true : undefined;
    case 'number':
      return readNumber(text, field, log);
    case 'weight':
      return readQuantity(parseWeight(text), field, log);
    case 'torque':
      return readQuantity(parseTorque(text), field, log);
    case 'weight-per-length':
      return readWeightPerLength(text, field, log);
    case 'money': {
      const parsed = parseMoney(text, log.currency);
      return parsed.ok ? parsed.minor : refuse(log, field, parsed);
    }
    case 'length':
      return readLength(text, field, reading.range, log);
    case 'lengths': {
      const read = text.split(';').map((part) => readLength(part.trim(), field, reading.range, log));
      return read.every((mm) => mm !== undefined) ? read : undefined;
    }
  }
}

interface Refused {
  readonly problem: string;
  readonly remedy: string;
}

function refuse(log: EntryLog, field: string, { problem, remedy }: Refused): undefined {
  log.faults.push({ field, said: `${problem} ${remedy}` });
}

function readLength(text: string, field: string, range: LengthRange, log: EntryLog): number | undefined {
  const parsed = parseLength(text, log.units, range);
  if (!parsed.ok) return refuse(log, field, parsed);
  if (parsed.note !== undefined) log.questions.push({ field, said: parsed.note });
  return toMm(parsed.length);
}

function readQuantity(parsed: ReturnType<typeof parseWeight>, field: string, log: EntryLog): number | undefined {
  return parsed.ok ? Number(parsed.value.toPrecision(12)) : refuse(log, field, parsed);
}

/** `6.5`, `6.5 kg/m` or `8.5 lb/ft`. */
function readWeightPerLength(text: string, field: string, log: EntryLog): number | undefined {
  const [, digits = '', unit = ''] = /^(\d+(?:[.,]\d+)?)\s*(kg\s*\/\s*m|lbs?\s*\/\s*ft)?$/i.exec(text) ?? [];
  if (digits === '')
    return refuse(log, field, {
      problem: `"${text.slice(0, 40)}" is no weight of a length.`,
      remedy: 'Write it like 12.6 kg/m or 8.5 lb/ft.',
    });
  const value = Number(digits.replace(',', '.'));
  return Number((/^lb/i.test(unit) ? kgPerMFromLbPerFt(value) : value).toPrecision(12));
}

function readNumber(text: string, field: string, log: EntryLog): number | undefined {
  const plain = text.replace(/^(-?\d+),(\d{1,2})$/, '$1.$2').replace(/(?<=\d),(?=\d{3}(\D|$))/g, '');
  if (/^-?(\d+(\.\d*)?|\.\d+)$/.test(plain)) return Number(plain);
  return refuse(log, field, {
    problem: `"${text.slice(0, 40)}" is not a number.`,
    remedy: 'Write it like 225 or 0.2.',
  });
}

export type Draft = Record<string, unknown>;

/** Puts a value at its path; nothing where there is none. `put(draft, 'feed.atMm', 1200)` makes `{ feed: { atMm: 1200 } }`. */
export function put(draft: Draft, path: string, value: unknown): void {
  if (value === undefined) return;
  const keys = path.split('.');
  const last = keys.pop() ?? path;
  let place: Draft = draft;
  for (const key of keys) {
    place[key] ??= {};
    place = place[key] as Draft;
  }
  place[last] = value;
}
