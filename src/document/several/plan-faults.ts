import type { Fault } from '../fault.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { sayList } from '../parsing/say.ts';
import { NAMING_WORDS, strangeWords } from './naming.ts';
import type { MadeRun } from './plan.ts';

/** As the job document limits a label. */
const LONGEST_NAME = 64;
/** So many of one kind are listed; more are counted. */
const LISTED = 12;

export function fault(path: string, message: string, remedy: string): Fault {
  return { path, message, remedy };
}

/** A naming whose words in braces are ours, and where it is one text for all. */
export function namingFaults(path: 'names' | 'supply', pattern: string | null): Fault[] {
  if (pattern === null) return [];
  const strange = strangeWords(pattern)[0];
  const ours = sayList(
    NAMING_WORDS.map((word) => `{${word}}`),
    'and',
  );
  if (strange !== undefined) return [fault(path, `{${strange}} is not filled in here.`, `The words are ${ours}.`)];
  if (/[{}]/.test(pattern.replace(/\{[^{}]*\}/g, '')))
    return [fault(path, `A brace in “${pattern}” stands alone.`, `Write the words as ${ours}.`)];
  return [];
}

/** Runs that are asked for and not there. */
export function absentFaults(asked: readonly string[], known: ReadonlySet<string>): Fault[] {
  if (asked.length === 0) return [fault('runs', 'No run is chosen.', 'Tick at least one run.')];
  const absent = asked.filter((id) => !known.has(id));
  return cut(
    absent.map((id) => {
      const meant = nearestWord(id, [...known]);
      return fault('runs', `The job has no run ${id}.`, meant ? `Did you mean ${meant}?` : 'Choose it anew.');
    }),
  );
}

/** No two made runs with one name, and none with a name that the job has. */
export function nameFaults(made: readonly MadeRun[], taken: ReadonlySet<string>): Fault[] {
  const sources = new Map<string, string>();
  const faults = made.flatMap(({ run: { id }, from }) => {
    const other = sources.get(id);
    sources.set(id, from);
    if (id.trim() === '') return [fault('names', `What is made of ${from} would have no name.`, 'Write a naming.')];
    if (id.length > LONGEST_NAME)
      return [
        fault(
          'names',
          `“${id.slice(0, 20)}…” is ${id.length} characters long; a name has ${LONGEST_NAME} at most.`,
          'Write a shorter naming.',
        ),
      ];
    if (other !== undefined)
      return [
        fault(
          'names',
          `${id} would be made twice, of ${other} and of ${from}.`,
          'Write a naming that tells them apart, such as {level}-{run}-{row}.',
        ),
      ];
    return taken.has(id)
      ? [
          fault(
            'names',
            `The job already has run ${id}, which ${from} would give its name to.`,
            'Choose other rows or levels, count on by more, or write a naming such as {level}-R{row}-{side}.',
          ),
        ]
      : [];
  });
  return cut(faults);
}

/** The first few, and one line that counts the rest. */
export function cut(faults: readonly Fault[]): Fault[] {
  if (faults.length <= LISTED) return [...faults];
  const [first] = faults;
  const more = faults.length - LISTED;
  return [...faults.slice(0, LISTED), fault(first?.path ?? '', `And ${more} more of this kind.`, 'One remedy serves.')];
}
