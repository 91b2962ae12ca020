import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakLines, cutLine } from '../../src/paper/pdf/break-lines.ts';
import { printable } from '../../src/paper/pdf/printable.ts';

// What the type of the book has: Latin-1 without its controls, and what code page 1252 puts in their place, from the table of
// the WHATWG Encoding Standard (index windows-1252; 81, 8D, 8F, 90 and 9D are unassigned).
const ADDED =
  '20AC 201A 0192 201E 2026 2020 2021 02C6 2030 0160 2039 0152 017D 2018 2019 201C 201D 2022 2013 2014 02DC 2122 0161 203A 0153 017E 0178';
const latin = Array.from({ length: 0x100 - 0x20 }, (_, index) => String.fromCharCode(0x20 + index)).filter(
  (letter) => !/\p{Cc}/u.test(letter),
);
const TYPE = new Set([...latin, ...ADDED.split(' ').map((code) => String.fromCharCode(Number.parseInt(code, 16)))]);

const altered = (text: string) => {
  const list: [string, string][] = [];
  const shown = printable(text, (character, as) => list.push([character, as]));
  return { shown, list };
};

describe('text on paper', () => {
  it('keeps every letter that the type has', () => {
    const kept = [...TYPE].filter((letter) => letter !== '\u00a0' && letter !== '\u00ad');
    expect(kept.filter((letter) => printable(letter) !== letter)).toEqual([]);
    expect(printable('Ærø, Malmö, Nîmes, 20 °C ± 0.5, ½″')).toBe('Ærø, Malmö, Nîmes, 20 °C ± 0.5, ½"');
  });

  it('prints nothing that the type lacks, whatever it is handed', () => {
    const isPrintable = (text: string) => [...printable(text)].every((letter) => TYPE.has(letter));
    fc.assert(fc.property(fc.string({ unit: 'binary' }), isPrintable), { numRuns: 1000 });
  });

  it('takes the marks off Polish and Turkish letters, and says which', () => {
    expect(altered('Łucja Żuławska')).toEqual({
      shown: 'Lucja Zulawska',
      list: [
        ['Ł', 'L'],
        ['Ż', 'Z'],
        ['ł', 'l'],
      ],
    });
    expect(printable('Işıl Çağrı')).toBe('Isil Çagri');
  });

  it('prints Greek, Cyrillic and Chinese names as code points, never as other letters or empty boxes', () => {
    expect(altered('山田').shown).toBe('[U+5C71][U+7530]');
    expect(altered('Ωμέγα').list[0]).toEqual(['Ω', '[U+03A9]']);
    expect(printable('😀')).toBe('[U+1F600]');
  });

  it('spells the signs of the trade without a note', () => {
    expect(altered('≥ 100 MΩ, ≈ 5 kΩ, −3 °C, 6′-2″, ΔT 4 K → ok')).toEqual({
      shown: '>= 100 megohm, ~ 5 kilohm, -3 °C, 6\'-2", delta T 4 K -> ok',
      list: [],
    });
  });

  it('lets no line break, tab or control character through, and shows what would turn the line around', () => {
    expect(printable('one\r\n\ttwo\u0000\u0007three')).toBe('one two three');
    expect(printable('safe\u202Ename')).toBe('safe[U+202E]name');
  });
});

describe('breaking lines', () => {
  const letters = (text: string) => text.length;

  it('breaks after blanks, hyphens and slashes, and never inside a figure or a date', () => {
    expect(breakLines('upper clamp torque', 12, letters)).toEqual(['upper clamp', 'torque']);
    expect(breakLines('at 11\'-6 1/16" on 2026-05-12', 11, letters)).toEqual(["at 11'-6", '1/16" on', '2026-05-12']);
  });

  it('breaks a word that is wider than the column, so that nothing leaves it', () => {
    expect(breakLines('aaaaaaaaaa', 4, letters)).toEqual(['aaaa', 'aaaa', 'aa']);
  });

  it('loses no letter and keeps every line within its width', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), fc.integer({ min: 1, max: 20 }), (text, width) => {
        const lines = breakLines(text, width, letters);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
        expect(lines.filter((line) => line.length > width)).toEqual([]);
      }),
    );
  });

  it('cuts where a place says the whole elsewhere, with dots', () => {
    expect(cutLine('Plover Quay Block C', 10, letters)).toBe('Plover Qu…');
    expect(cutLine('Plover', 10, letters)).toBe('Plover');
  });
});
