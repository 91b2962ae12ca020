import type { RunDocument } from '../schema/run.ts';
import { countedOn, idParts, wordPattern } from './id-parts.ts';

/** What a new run differs in from the run it is made from. */
export interface NewPlace {
  readonly level: string;
  /** How far the number in the id is counted on. */
  readonly rowsOn: number;
  readonly side: 'A' | 'B' | null;
}

/** The words that a naming of one's own may hold, in braces. */
export const NAMING_WORDS = ['level', 'row', 'side', 'run', 'supply'] as const;
type NamingWord = (typeof NAMING_WORDS)[number];

/** The words of a naming that are none of ours; empty when all are. `strangeWords('{floor}-{row}') = ['floor']`. */
export function strangeWords(pattern: string): string[] {
  const known: readonly string[] = NAMING_WORDS;
  return [...pattern.matchAll(/\{([^{}]*)\}/g)].flatMap(([, word = '']) => (known.includes(word) ? [] : [word]));
}

/**
 * The id of a run made from another. Without a naming of one's own the level in the id is replaced, the number beside it
 * counted on, and the letter of the feed side changed. `newId('F1-R02-A' on F1, { level: 'F2', rowsOn: 1, side: 'A' }) = 'F2-R03-A'`.
 */
export function newId(run: RunDocument, place: NewPlace, pattern: string | null): string {
  if (pattern !== null) return filled(pattern, run, place);
  const { level, row } = idParts(run.id, run.level);
  const pieces = [
    ...(level === null ? [] : [{ ...level, text: place.level }]),
    ...(row === null ? [] : [{ ...row, text: countedOn(run.id.slice(row.from, row.to), place.rowsOn) }]),
  ].sort((a, b) => b.from - a.from);
  const moved = pieces.reduce((id, { from, to, text }) => id.slice(0, from) + text + id.slice(to), run.id);
  return otherSide(moved, run.side ?? null, place.side);
}

/** A text that names level, row or side, renamed by the rule of the ids. `renamed('PDU-F1-A', …) = 'PDU-F2-A'`. */
export function renamed(text: string, run: RunDocument, place: NewPlace): string {
  const { row, rowWord } = idParts(run.id, run.level);
  const words = new Map<string, string>();
  if (row !== null && rowWord !== null) {
    const digits = run.id.slice(row.from, row.to);
    words.set(rowWord, rowWord.replace(digits, countedOn(digits, place.rowsOn)));
  }
  words.set(run.level, place.level);
  return text.replace(wordPattern([...words.keys()], 'g'), (word) => words.get(word) ?? word);
}

/** The letter of the feed side where it stands last, alone or behind a number. `otherSide('PDU-1A', 'A', 'B') = 'PDU-1B'`. */
export function otherSide(text: string, from: 'A' | 'B' | null, to: 'A' | 'B' | null): string {
  if (from === null || to === null || from === to) return text;
  const at = [...text.matchAll(new RegExp(`(?<!\\p{L})${from}(?![\\p{L}\\p{N}])`, 'gu'))].at(-1)?.index;
  return at === undefined ? text : `${text.slice(0, at)}${to}${text.slice(at + 1)}`;
}

/** A naming of one's own with its words filled in. */
export function filled(pattern: string, run: RunDocument, place: NewPlace): string {
  const { row } = idParts(run.id, run.level);
  const words: Readonly<Record<NamingWord, string>> = {
    level: place.level,
    row: row === null ? String(place.rowsOn + 1) : countedOn(run.id.slice(row.from, row.to), place.rowsOn),
    side: place.side ?? '',
    run: run.id,
    supply: run.feed.supply ?? '',
  };
  return pattern.replace(/\{([^{}]*)\}/g, (all, word: string) =>
    Object.hasOwn(words, word) ? words[word as NamingWord] : all,
  );
}
