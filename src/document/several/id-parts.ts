/** Where the level and the row stand in the id of a run. */
export interface IdParts {
  /** Places of the level's own label in the id; null where it does not stand there as a word. */
  readonly level: Span | null;
  /** Places of the first number beside the level: the row. */
  readonly row: Span | null;
  /** The row with the letters that it is written together with: "R01". */
  readonly rowWord: string | null;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Finds level and row in an id. `idParts('F1-R02-A', 'F1').rowWord = 'R02'`. */
export function idParts(id: string, level: string): IdParts {
  const levelSpan = wordSpan(id, level);
  const numbers = [...id.matchAll(/\d+/g)].map(({ index, 0: digits }) => ({ from: index, to: index + digits.length }));
  const row = numbers.find(({ from, to }) => levelSpan === null || to <= levelSpan.from || from >= levelSpan.to);
  return { level: levelSpan, row: row ?? null, rowWord: row === undefined ? null : wordAround(id, row) };
}

/** The number of the row; null where the id has none. `rowNumber('F1-R02-A', 'F1') = 2`. */
export function rowNumber(id: string, level: string): number | null {
  const { row } = idParts(id, level);
  return row === null ? null : Number(id.slice(row.from, row.to));
}

/** Digits counted on, as wide as they were. `countedOn('09', 3) = '12'`. */
export function countedOn(digits: string, by: number): string {
  return String(Number(digits) + by).padStart(digits.length, '0');
}

/** Where a text stands in another as a word of its own; null where it does not. */
function wordSpan(text: string, word: string): Span | null {
  const found = wordPattern([word]).exec(text);
  return found === null ? null : { from: found.index, to: found.index + word.length };
}

/** Finds any of these as whole words: no letter or digit stands before or after. */
export function wordPattern(words: readonly string[], flags = ''): RegExp {
  const longestFirst = [...words].sort((a, b) => b.length - a.length).map(escaped);
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${longestFirst.join('|')})(?![\\p{L}\\p{N}])`, `u${flags}`);
}

function wordAround(id: string, { from, to }: Span): string {
  const before = /[\p{L}\p{N}]*$/u.exec(id.slice(0, from))?.[0] ?? '';
  const after = /^[\p{L}\p{N}]*/u.exec(id.slice(to))?.[0] ?? '';
  return `${before}${id.slice(from, to)}${after}`;
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
}
