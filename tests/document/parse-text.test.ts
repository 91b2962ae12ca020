import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseJobText, parseJsonText } from '../../src/document/parse-text.ts';
import { fullDocument } from './full-document.ts';

const TEXT = JSON.stringify(fullDocument(), null, 2);

describe('a file that can be read', () => {
  test('is the document that it holds', () => {
    expect(parseJobText(TEXT)).toEqual({ ok: true, document: fullDocument() });
    expect(parseJobText(new TextEncoder().encode(TEXT))).toEqual({ ok: true, document: fullDocument() });
  });

  test('may begin with a byte order mark and have the line ends of another system', () => {
    const text = `\uFEFF${TEXT.replaceAll('\n', '\r\n')}`;
    expect(parseJobText(text).ok).toBe(true);
    expect(parseJobText(new TextEncoder().encode(text)).ok).toBe(true);
  });

  test('is refused by the rules of the document, with their paths', () => {
    expect(parseJobText('{"format": "busway-jobbook/1"}')).toMatchObject({
      ok: false,
      faults: [{ path: 'buswayTypes' }, { path: 'levels' }, { path: 'project' }, { path: 'runs' }],
    });
  });
});

describe('slips of syntax name their line and column', () => {
  test.each([
    ['{\n  "a": 1,\n}', '', 'Line 3, column 1: A comma stands before }', 'Take the last comma out.'],
    ['{\n  "a": [1, 2,]\n}', 'a[2]', 'Line 2, column 14: A value is missing before ]', 'the last comma'],
    ['{"a": 1\n "b": 2}', '', 'Line 2, column 2: A comma or } is missing before "b"', 'Write a comma'],
    ['{"a" 1}', '', 'Line 1, column 6: A colon is missing', 'Write :'],
    ["{'a': 1}", '', 'Line 1, column 2: Text stands in straight double quotation marks', 'Write "'],
    ['{“a”: 1}', '', 'Line 1, column 2: Text stands in straight double', 'a word processor'],
    ['{a: 1}', '', 'Line 1, column 2: A key was expected here, not a', 'double quotation marks'],
    ['{"a": .5}', 'a', 'Line 1, column 7: ".5" is not a number of JSON', '3048'],
    ['{"a": 05}', '', 'Line 1, column 8: A comma or } is missing', 'Write a comma'],
    ['{"a": NaN}', 'a', 'Line 1, column 7: "NaN" is not a value of JSON', 'leave the key out'],
    ['{"a": 1 // one\n}', '', 'Line 1, column 9: JSON has no comments', 'Take the comment out'],
    ['{"a": "x\ny"}', 'a', 'Line 1, column 9: A line break or a tab stands inside a text', '\\n'],
    ['{"a": "C:\\dir"}', 'a', 'Line 1, column 10: A backslash', '\\\\'],
    ['{"a": "never', 'a', 'Line 1, column 7: This text is never closed', 'closing quotation mark'],
    ['{"a": [1, {"b": 2}', '', 'Line 1, column 19: The text ends before', 'cut short'],
    ['{"a": [1}', '', 'Line 1, column 9: } closes what was not opened here', 'Close with ]'],
    ['{} {}', '', 'Line 1, column 4: The text goes on after its end', 'one document'],
    ['', '', 'The file is empty', 'Choose the file'],
    [' \n ', '', 'The file is empty', 'Choose the file'],
  ])('%j', (text, path, message, remedy) => {
    expect(parseJsonText(text)).toMatchObject({
      ok: false,
      faults: [
        {
          path: expect.stringContaining(path),
          message: expect.stringContaining(message),
          remedy: expect.stringContaining(remedy),
        },
      ],
    });
  });

  test('a key that stands twice is refused each time, with its path', () => {
    expect(parseJsonText('{"a": 1,\n "b": [{"c": 1, "c": 2}],\n "\\u0061": 3}')).toMatchObject({
      ok: false,
      faults: [
        { path: 'b[0].c', message: 'Line 2, column 17: This key stands twice in its object.' },
        { path: 'a', message: 'Line 3, column 2: This key stands twice in its object.' },
      ],
    });
  });

  test('bytes that are no UTF-8 are told apart from a slip', () => {
    expect(parseJsonText(new Uint8Array([0xff, 0xfe, 0x7b, 0x00]))).toMatchObject({
      ok: false,
      faults: [{ message: 'The file is not text in UTF-8.' }],
    });
  });

  test('brackets without end are refused, not followed', () => {
    expect(parseJsonText('['.repeat(100_000))).toMatchObject({
      ok: false,
      faults: [{ message: expect.stringContaining('nests more than 64 deep') }],
    });
  });

  test('a hundred thousand repeats of a key are not listed one by one', () => {
    const parsed = parseJsonText(`{${'"a":1,'.repeat(100_000)}"a":1}`);
    expect(parsed.ok ? [] : parsed.faults).toHaveLength(100);
  });
});

// Second opinion: the engine's own JSON.parse, on texts that are JSON and on texts that are nearly JSON.
describe('reads exactly what JSON.parse reads', () => {
  function engineReads(text: string): boolean {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  }

  test('any value that was written as JSON', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), (text) => {
        expect(parseJsonText(text)).toEqual({ ok: true, value: JSON.parse(text) });
      }),
    );
  });

  test('any such text with one character changed', () => {
    const edits = fc.record({
      text: fc.json({ maxDepth: 4 }),
      at: fc.nat(200),
      put: fc.constantFrom(
        '',
        '"',
        '\\',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '0',
        '-',
        '.',
        'e',
        't',
        ' ',
        '\n',
        '\t',
        '\u0000',
        '\u00a0',
      ),
    });
    fc.assert(
      fc.property(edits, ({ text, at, put }) => {
        const spot = at % text.length;
        const changed = text.slice(0, spot) + put + text.slice(spot + 1);
        const read = parseJsonText(changed);
        const hasTwice = !read.ok && read.faults.some((fault) => fault.message.includes('stands twice'));
        expect(read.ok || hasTwice).toBe(changed.trim() !== '' && engineReads(changed));
      }),
      { numRuns: 1000 },
    );
  });
});
