/** A character that the book's type does not have, and what stands in its place. */
export type Alter = (character: string, shown: string) => void;

/**
 * Text as the book's type can print it. The type is Helvetica in the Windows Latin set (code page 1252), which every reader
 * of PDF has. Signs with a common spelling are spelled (`≥` as `>=`); a letter with a mark that the set lacks loses the mark
 * (`Ż` as `Z`), and any other character is printed as its code point (`山` as `[U+5C71]`): never as another letter
 * or an empty box. Every such change is told to `alter`, so that the book can list it. Line breaks, tabs and control
 * characters become one space; characters that would turn or hide text are printed as their code point.
 *
 * Example: `printable('Łódź ≥ 5') = 'Lódz >= 5'`.
 */
export function printable(text: string, alter: Alter = () => {}): string {
  if (PLAIN.test(text)) return text;
  let printed = '';
  const worded = text
    .normalize('NFC')
    .replaceAll(BLANKS, ' ')
    .replaceAll(OHM, (_, prefix: string) => OHMS[prefix] ?? 'ohm')
    .replaceAll(DELTA, 'delta ');
  for (const character of worded) printed += print(character, alter);
  return printed;
}

const PLAIN = /^[ -~¡-¬®-ÿ]*$/;
/** Blanks of every kind, line ends and control characters in a row are one space on paper. */
const BLANKS = /[\s\p{Cc}]+/gu;
// Two Greek letters are signs of a unit or a difference where they stand alone, and letters of a name elsewhere.
const OHM = /(?<![\p{L}])([kMGm\u00b5]?)\u03a9(?!\p{L})/gu;
const OHMS: Readonly<Record<string, string>> = { k: 'kilohm', M: 'megohm', G: 'gigohm', m: 'milliohm', µ: 'microhm' };
const DELTA = /\u0394(?=[A-Za-z])/gu;
/** Printable Latin-1, and what code page 1252 adds to it. */
const IN_SET = /^[ -~¡-¬®-ÿ€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ]$/u;

function print(character: string, alter: Alter): string {
  if (IN_SET.test(character)) return character;
  const spelled = SPELLED.get(character);
  if (spelled !== undefined) return spelled;
  const shown = withoutMark(character) ?? codePoint(character);
  alter(character, shown);
  return shown;
}

/** Signs whose spelling says the same, so that no note is needed. U+00AD, a soft hyphen, is a hint to break and no letter. */
const SPELLED: ReadonlyMap<string, string> = new Map([
  ['≥', '>='],
  ['≤', '<='],
  ['≠', '<>'],
  ['≈', '~'],
  ['−', '-'],
  ['‐', '-'],
  ['‑', '-'],
  ['‒', '-'],
  ['―', '—'],
  ['′', "'"],
  ['″', '"'],
  ['→', '->'],
  ['←', '<-'],
  ['⋅', '·'],
  ['∙', '·'],
  ['μ', 'µ'],
  ['√', 'sqrt '],
  ['∞', 'infinity'],
  ['ﬁ', 'fi'],
  ['ﬂ', 'fl'],
  ['\u00ad', ''],
]);

/** Letters that Unicode does not take apart into a letter and a mark. */
const STROKED: ReadonlyMap<string, string> = new Map([
  ['Ł', 'L'],
  ['ł', 'l'],
  ['Đ', 'D'],
  ['đ', 'd'],
  ['Ħ', 'H'],
  ['ħ', 'h'],
  ['ı', 'i'],
  ['Ŧ', 'T'],
  ['ŧ', 't'],
]);

function withoutMark(character: string): string | null {
  const stroked = STROKED.get(character);
  if (stroked !== undefined) return stroked;
  const base = character.normalize('NFD').replaceAll(/\p{Mn}/gu, '');
  return base !== '' && base !== character && /^[A-Za-z]+$/.test(base) ? base : null;
}

function codePoint(character: string): string {
  return `[U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;
}
