import { type FieldEntries, MOST_NOTE } from './entries.ts';

const LEAST = 3;

/** A reason of a word or two at least. */
export function reasonOf(entries: FieldEntries, remedy: string): string {
  const reason = entries.needed('reason', remedy, MOST_NOTE);
  if (reason !== '' && reason.length < LEAST) entries.fault('reason', 'Say it in a few words: three signs at least.');
  return reason;
}
