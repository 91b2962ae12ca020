import type { UnitSystem } from '../../domain/model.ts';
import { toMm } from '../../domain/units/length.ts';
import { type LengthRange, parseLength } from '../../domain/units/parse-length.ts';
import type { LengthUnit } from '../../domain/units/read-length.ts';
import { nearestWord, suggester } from '../parsing/nearest-word.ts';
import { sayList, sayValue } from '../parsing/say.ts';

/** What a cell says: a value, with a question where it may not be what was meant, or what is wrong with it. */
export type Cell<T> =
  | { readonly value: T; readonly question?: string }
  | { readonly problem: string; readonly remedy: string };

/** A label or a plain text, as it stands. */
export function readText(text: string): Cell<string> {
  return { value: text };
}

export function readOneOf<const T extends string>(choices: readonly T[]): (text: string) => Cell<T> {
  return (text) => {
    const plain = plainChoice(text);
    const found = choices.find((choice) => plainChoice(choice) === plain);
    if (found !== undefined) return { value: found };
    const meant = nearestWord(text, choices);
    const remedy = meant ? `Did you mean ${meant}?` : 'Write one of these.';
    return { problem: `${sayValue(text)} is not ${sayList(choices, 'or')}.`, remedy };
  };
}

type Known = Pick<ReadonlySet<string>, 'has' | 'keys'> | Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>;

/** A label that must be there already. Make one reader for a whole list: it counts what it offers. */
export function readKnown(noun: string, known: Known): (text: string) => Cell<string> {
  const some = [...known.keys()].slice(0, 6);
  const suggest = suggester(known.keys());
  const orElse = `Add the ${noun} first${some.length > 0 ? `, or use one of the job, such as ${sayList(some, 'or')}` : ''}.`;
  return (text) => {
    if (known.has(text)) return { value: text };
    const meant = suggest(text);
    const remedy = meant ? `Did you mean ${meant}?` : orElse;
    return { problem: `The job has no ${noun} ${sayValue(text)}.`, remedy };
  };
}

/** A length in any form that the project reads, in mm; the heading's unit goes before the project's. */
export function readLengthCell(
  units: UnitSystem,
  unit: LengthUnit | null,
  range: LengthRange,
): (text: string) => Cell<number> {
  return (text) => {
    const isBare = /^[-+]?[\d.,\s]+$/.test(text);
    const parsed = parseLength(isBare && unit !== null ? `${text} ${unit}` : text, units, range);
    if (!parsed.ok) return { problem: parsed.problem, remedy: parsed.remedy };
    return { value: toMm(parsed.length), ...(parsed.note !== undefined && { question: parsed.note }) };
  };
}

/** Several lengths or words in one cell, separated by `;`. */
export function readEach<T>(read: (text: string) => Cell<T>): (text: string) => Cell<T[]> {
  return (text) => {
    const parts = text.split(';').map((part) => part.trim());
    const values: T[] = [];
    const questions: string[] = [];
    for (const part of parts) {
      const cell: Cell<T> = part === '' ? EMPTY_PART : read(part);
      if ('problem' in cell) return cell;
      values.push(cell.value);
      if (cell.question !== undefined) questions.push(cell.question);
    }
    return { value: values, ...(questions.length > 0 && { question: questions.join(' ') }) };
  };
}

const EMPTY_PART = { problem: 'A part between two semicolons is empty.', remedy: 'Give each leg its own figure.' };

/** A number with its unit or without; `units` gives the factor of each unit that may follow. */
export function readFigure(units: Readonly<Record<string, number>>, what: string): (text: string) => Cell<number> {
  return (text) => {
    const [, digits, unit = ''] = /^([-+]?(?:\d[\d,]*(?:\.\d+)?|\.\d+))\s*(.*)$/.exec(text) ?? [];
    const factor = Object.hasOwn(units, unit.toLowerCase()) ? units[unit.toLowerCase()] : undefined;
    const value = digits === undefined ? undefined : readDigits(digits);
    if (value === undefined) return { problem: `${sayValue(text)} is not a number.`, remedy: `Give ${what}.` };
    if (factor === undefined)
      return { problem: `${sayValue(unit)} is not a unit that fits here.`, remedy: `Give ${what}.` };
    return { value: Number((value * factor).toPrecision(15)) };
  };
}

function readDigits(digits: string): number | undefined {
  if (!digits.includes(',')) return Number(digits);
  if (/^[-+]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits)) return Number(digits.replaceAll(',', ''));
  return /^[-+]?\d+,\d+$/.test(digits) ? Number(digits.replace(',', '.')) : undefined;
}

function plainChoice(text: string): string {
  return text.toLowerCase().replace(/[\s_.–-]/g, '');
}
