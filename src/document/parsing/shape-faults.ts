import type { z } from 'zod';
import { type Fault, formatPath, type PathPart } from '../fault.ts';
import { fieldAt, keysOf } from './field.ts';
import { nearestWord } from './nearest-word.ts';
import { sayList, sayNumber, sayValue } from './say.ts';
import { sayRange } from './say-range.ts';

type Issue = z.core.$ZodIssue;
type Saying = Pick<Fault, 'message' | 'remedy'>;

interface Place {
  readonly path: readonly PathPart[];
  readonly key: string;
  readonly value: unknown;
  readonly field: z.ZodType | undefined;
}

/** Says in plain words what a schema found wrong with `input`: one fault a place, each with what to do. */
export function shapeFaults(schema: z.ZodType, issues: readonly Issue[], input: unknown): Fault[] {
  const faults = new Map<string, Fault>();
  for (const fault of issues.flatMap((issue) => readIssue(schema, issue, input))) {
    if (!faults.has(fault.path)) faults.set(fault.path, fault);
  }
  return [...faults.values()];
}

/** The part of the path that people and rules speak of: keys and indices. */
export function placeOf(issue: Issue): PathPart[] {
  return issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part));
}

function readIssue(schema: z.ZodType, issue: Issue, input: unknown): Fault[] {
  const path = placeOf(issue);
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(schema, [...path, key]));
  const place = { path, key: nameOf(path), value: valueAt(input, path), field: fieldAt(schema, path) };
  return [{ path: formatPath(path), ...sayIssue(issue, place) }];
}

function sayIssue(issue: Issue, place: Place): Saying {
  switch (issue.code) {
    case 'invalid_type':
      return sayWrongType(issue.expected, place);
    case 'too_small':
    case 'too_big':
      return sayTooMuch(issue, place);
    case 'invalid_value':
      return sayChoice(issue.values.map(String), place);
    case 'invalid_union':
      return sayChoice(keysOfUnion(issue), place);
    case 'invalid_format':
      return sayFormat(place);
    case 'invalid_key':
      return {
        message: `${sayValue(place.key)} cannot be the name of an entry.`,
        remedy: 'Use 1 to 64 characters on one line, without a blank at either end.',
      };
    default:
      return { message: `${place.key}: ${issue.message}.`, remedy: `Give ${describe(place)}.` };
  }
}

function sayWrongType(expected: string, place: Place): Saying {
  const { key, value } = place;
  if (value === undefined) return { message: `${key} is missing.`, remedy: `Give ${describe(place)}.` };
  if (value === null) {
    return {
      message: `${key} is null.`,
      remedy: `Give ${describe(place)}; a key that may be absent is left out.`,
    };
  }
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return {
      message: `${key} is ${value}, not a number that can be reckoned with.`,
      remedy: `Give ${describe(place)}.`,
    };
  }
  if (expected === 'int') {
    return { message: `${key} is ${sayValue(value)}; it must be a whole number.`, remedy: wholeRemedy(place) };
  }
  const message = `${key} is ${sayValue(value)}; it must be ${KIND_WORDS[expected] ?? expected}.`;
  return { message, remedy: typeRemedy(expected, place) };
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list [ ]',
  object: 'an object { }',
  record: 'an object { }',
};

function typeRemedy(expected: string, place: Place): string {
  const { value } = place;
  if (expected === 'number' && typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value))) {
    return `Write ${Number(value)} without quotation marks.`;
  }
  if (expected === 'string' && typeof value === 'number') return `Write "${value}" with quotation marks.`;
  return `Give ${describe(place)}.`;
}

function wholeRemedy(place: Place): string {
  const isMoney = describe(place).includes('minor units');
  return isMoney
    ? `Write money in whole minor units: 12.50 is 1250. Give ${describe(place)}.`
    : `Give ${describe(place)}, without a fraction.`;
}

function sayTooMuch(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, place: Place): Saying {
  const { key, value } = place;
  if (typeof value === 'number') return sayRange(issue, { key, value, description: describe(place) });
  const limit = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  if (typeof value === 'string') {
    return value === ''
      ? { message: `${key} is empty.`, remedy: `Give ${describe(place)}.` }
      : {
          message: `${key} has ${sayNumber(value.length)} characters; at most ${sayNumber(limit)} are kept.`,
          remedy: 'Shorten it.',
        };
  }
  const held = Array.isArray(value) ? value.length : 0;
  return issue.code === 'too_small'
    ? { message: `${key} is an empty list.`, remedy: `Give at least ${sayNumber(limit)}: ${describe(place)}.` }
    : {
        message: `${key} has ${sayNumber(held)} entries; at most ${sayNumber(limit)} are read.`,
        remedy: 'Split the job into smaller ones, or look for entries that were pasted twice.',
      };
}

function sayChoice(choices: readonly string[], place: Place): Saying {
  const { key, value } = place;
  if (value === undefined) return { message: `${key} is missing.`, remedy: `Write ${quoted(choices)}.` };
  if (key === 'format') {
    return {
      message: `The file says that its format is ${sayValue(value)}; this program reads ${quoted(choices)}.`,
      remedy: 'Export the job again from the program that wrote it, or correct the format if the file was typed.',
    };
  }
  const message = `${key} is ${sayValue(value)}; it can be ${quoted(choices)}.`;
  return { message, remedy: choiceRemedy(choices, place) };
}

function choiceRemedy(choices: readonly string[], { key, value }: Place): string {
  const typed = String(value);
  if (key === 'phases' && /^[ABC]([-–][ABC])*$/i.test(typed)) {
    return 'A-side or phase L1? Letters name the feed sides here; phases are L1, L2 and L3.';
  }
  if (key === 'side' && /^L[123]$/i.test(typed)) return 'Feed sides are "A" and "B"; L1, L2 and L3 are phases.';
  const side = /^([AB])[- ]?side$/i.exec(typed)?.[1];
  const meant = side?.toUpperCase() ?? nearestWord(typed, choices);
  return meant && choices.includes(meant) ? `Did you mean "${meant}"?` : 'Write one of these, exactly as they stand.';
}

function sayFormat(place: Place): Saying {
  const { key, value } = place;
  if (key === 'currency') {
    return {
      message: `currency is ${sayValue(value)}.`,
      remedy: 'Write the three capital letters of ISO 4217, such as USD.',
    };
  }
  if (describe(place).includes('a day as 2026-05-12')) {
    return {
      message: `${key} is ${sayValue(value)}, which is no day of the calendar.`,
      remedy: 'Write year, month and day like 2026-05-12.',
    };
  }
  return {
    message: `${key} is ${sayValue(value)}: it begins or ends with a blank, or holds a character that cannot be kept.`,
    remedy: 'Take out blanks at either end, line breaks, tabs and other control characters.',
  };
}

function unknownKey(schema: z.ZodType, path: readonly PathPart[]): Fault {
  const keys = keysOf(fieldAt(schema, path.slice(0, -1)));
  const key = String(path.at(-1));
  const meant = nearestWord(key, keys);
  return {
    path: formatPath(path),
    message: `"${key.slice(0, 60)}" is not a key that is known here.`,
    remedy: meant ? `Did you mean "${meant}"?` : `Remove it. Known keys here: ${sayList(keys, 'and')}.`,
  };
}

function keysOfUnion(issue: z.core.$ZodIssueInvalidUnion): string[] {
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options : [];
  return options.map(String);
}

function describe(place: Place): string {
  const words = place.field?.description;
  if (!words) return place.key;
  // A word in capitals, such as ISO, keeps them inside a sentence.
  const inside = /^[A-Z][a-z ]/.test(words) ? `${words.charAt(0).toLowerCase()}${words.slice(1)}` : words;
  return typeof place.path.at(-1) === 'string' ? `${place.key}: ${inside}` : inside;
}

function nameOf(path: readonly PathPart[]): string {
  const last = path.at(-1);
  if (last === undefined) return 'The document';
  return typeof last === 'string' ? last : `Entry ${last + 1} of ${nameOf(path.slice(0, -1))}`;
}

function quoted(choices: readonly string[]): string {
  return sayList(
    choices.map((choice) => `"${choice}"`),
    'or',
  );
}

function valueAt(input: unknown, path: readonly PathPart[]): unknown {
  let at = input;
  for (const part of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, part)) return undefined;
    at = Reflect.get(at, part);
  }
  return at;
}
