import type { PathPart } from '../fault.ts';
import { sayKeySlip, sayMarkSlip, sayStringSlip, sayValueSlip, type Words } from './say-json-slip.ts';

/** Something in a JSON text that keeps it from being read, or from being read in one way only. */
export interface JsonSlip extends Words {
  /** Offset in the text, in UTF-16 units. */
  readonly at: number;
  readonly path: readonly PathPart[];
}

interface Reader {
  readonly text: string;
  readonly path: PathPart[];
  readonly slips: JsonSlip[];
}

/** Offset after what was read; undefined once a slip of syntax has been noted, which ends the reading. */
type Next = number | undefined;

/** Job documents nest 9 deep; a text past this was made to hurt. */
const MOST_DEPTH = 64;
/** Past this many keys that stand twice the rest is not listed: the file was made so, not typed. */
const MOST_SLIPS = 100;
const BLANKS = /[ \t\n\r]*/y;
const WORD = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/**
 * Reads a text by the grammar of RFC 8259 and gives its first slip of syntax, after every key that an object has
 * twice (`JSON.parse` would silently keep the last). What the text means is still for `JSON.parse` to say.
 */
export function scanJson(text: string): JsonSlip[] {
  const reader: Reader = { text, path: [], slips: [] };
  const end = readValue(reader, skipBlanks(text, 0));
  const rest = end === undefined ? text.length : skipBlanks(text, end);
  if (rest < text.length)
    note(reader, rest, { message: 'The text goes on after its end.', remedy: 'Keep one document in a file.' });
  return reader.slips;
}

function readValue(reader: Reader, at: number): Next {
  const sign = reader.text[at];
  if (sign === '{' || sign === '[') return readNested(reader, at, sign);
  if (sign === '"') return readString(reader, at);
  return endOf(WORD, reader.text, at) ?? note(reader, at, sayValueSlip(reader.text, at));
}

function readNested(reader: Reader, at: number, sign: '{' | '['): Next {
  if (reader.path.length === MOST_DEPTH) {
    const remedy = 'Export the job again: a job document nests 9 deep.';
    return note(reader, at, { message: `The text nests more than ${MOST_DEPTH} deep.`, remedy });
  }
  return sign === '{' ? readObject(reader, at) : readArray(reader, at);
}

function readObject(reader: Reader, open: number): Next {
  const keys = new Set<string>();
  let at: Next = skipBlanks(reader.text, open + 1);
  if (reader.text[at] === '}') return at + 1;
  for (;;) {
    at = readEntry(reader, at, keys);
    if (at === undefined) return undefined;
    at = skipBlanks(reader.text, at);
    if (reader.text[at] === '}') return at + 1;
    if (reader.text[at] !== ',') return note(reader, at, sayMarkSlip(reader.text, at, '}'));
    at = skipBlanks(reader.text, at + 1);
  }
}

function readEntry(reader: Reader, at: number, keys: Set<string>): Next {
  if (reader.text[at] !== '"') return note(reader, at, sayKeySlip(reader.text, at));
  const end = readString(reader, at);
  if (end === undefined) return undefined;
  const key: unknown = JSON.parse(reader.text.slice(at, end));
  const colon = skipBlanks(reader.text, end);
  if (reader.text[colon] !== ':') return note(reader, colon, sayMarkSlip(reader.text, colon, ':'));
  return within(reader, String(key), () => {
    if (keys.has(String(key)) && reader.slips.length < MOST_SLIPS)
      note(reader, at, { message: 'This key stands twice in its object.', remedy: 'Keep the one that holds.' });
    keys.add(String(key));
    return readValue(reader, skipBlanks(reader.text, colon + 1));
  });
}

function readArray(reader: Reader, open: number): Next {
  let at: Next = skipBlanks(reader.text, open + 1);
  if (reader.text[at] === ']') return at + 1;
  for (let index = 0; ; index++) {
    const start: number = at;
    at = within(reader, index, () => readValue(reader, start));
    if (at === undefined) return undefined;
    at = skipBlanks(reader.text, at);
    if (reader.text[at] === ']') return at + 1;
    if (reader.text[at] !== ',') return note(reader, at, sayMarkSlip(reader.text, at, ']'));
    at = skipBlanks(reader.text, at + 1);
  }
}

function readString(reader: Reader, open: number): Next {
  const { text } = reader;
  let at = open + 1;
  while (at < text.length) {
    const sign = text.charCodeAt(at);
    if (sign === 0x22) return at + 1;
    if (sign < 0x20) break;
    const next = sign === 0x5c ? endOf(ESCAPE, text, at) : at + 1;
    if (next === undefined) break;
    at = next;
  }
  return note(reader, at < text.length ? at : open, sayStringSlip(text, at));
}

function within(reader: Reader, part: PathPart, read: () => Next): Next {
  reader.path.push(part);
  const next = read();
  reader.path.pop();
  return next;
}

function note(reader: Reader, at: number, words: Words): undefined {
  reader.slips.push({ at, path: [...reader.path], ...words });
}

function skipBlanks(text: string, at: number): number {
  return endOf(BLANKS, text, at) ?? at;
}

function endOf(pattern: RegExp, text: string, at: number): Next {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}
