import { extrasByLabel } from './comparing/extras-by-label.ts';
import { type FieldChange, fieldChanges } from './comparing/field-changes.ts';
import type { JobDocument, RunDocument } from './job-document.ts';

export type { FieldChange } from './comparing/field-changes.ts';

export type Noun = 'project' | 'level' | 'busway type' | 'run' | 'tap' | 'extra' | 'labour book' | 'activity' | 'bid';

/** One thing that is in one document and not in the other, or not the same in both. */
export interface Difference {
  readonly noun: Noun;
  /** The label; empty for what a job has one of, and for the order of a list. */
  readonly id: string;
  /** The run of a tap, else null. */
  readonly run: string | null;
  readonly change: 'added' | 'removed' | 'changed' | 'reordered';
  /** What differs, by path within the thing; empty when it was added or removed. */
  readonly fields: readonly FieldChange[];
}

/**
 * What differs from document `a` to document `b`, by noun and label: the project, levels, types, runs with their taps,
 * extras, the labour book and the bid. A renamed thing is one removed and one added. Equal documents differ in nothing.
 */
export function compareDocuments(a: JobDocument, b: JobDocument): Difference[] {
  return [
    ...compareOne('project', a.project, b.project),
    ...compareLists('level', byId(a.levels), byId(b.levels)),
    ...compareLists('busway type', byId(a.buswayTypes), byId(b.buswayTypes)),
    ...compareRuns(a.runs, b.runs),
    ...compareLists('extra', extrasByLabel(a.extras), extrasByLabel(b.extras)),
    ...compareBooks(a.labourBook, b.labourBook),
    ...compareOne('bid', a.bid, b.bid),
  ];
}

type Things = ReadonlyMap<string, object>;

function compareOne(noun: Noun, before: object | undefined, after: object | undefined): Difference[] {
  return compareThings(noun, '', null, before, after);
}

function compareThings(noun: Noun, id: string, run: string | null, before?: object, after?: object): Difference[] {
  if (!before && !after) return [];
  if (!before) return [{ noun, id, run, change: 'added', fields: [] }];
  if (!after) return [{ noun, id, run, change: 'removed', fields: [] }];
  const fields = fieldChanges(before, after);
  return fields.length === 0 ? [] : [{ noun, id, run, change: 'changed', fields }];
}

function compareLists(noun: Noun, before: Things, after: Things, run: string | null = null): Difference[] {
  const ids = inBoth(before, after);
  const things = ids.flatMap((id) => compareThings(noun, id, run, before.get(id), after.get(id)));
  return [...things, ...compareOrder(noun, before, after, run)];
}

/** Those of `before` in their order, then what `after` adds in its own. */
function inBoth(before: Things, after: Things): string[] {
  return [...new Set([...before.keys(), ...after.keys()])];
}

/** The order of a list has a meaning: repeats are learned in it. Only things that both have can change places. */
function compareOrder(noun: Noun, before: Things, after: Things, run: string | null): Difference[] {
  const was = [...before.keys()].filter((id) => after.has(id));
  const is = [...after.keys()].filter((id) => before.has(id));
  if (was.every((id, i) => id === is[i])) return [];
  return [{ noun, id: '', run, change: 'reordered', fields: [{ path: '', before: was, after: is }] }];
}

function compareRuns(before: readonly RunDocument[], after: readonly RunDocument[]): Difference[] {
  const was = byId(before);
  const is = byId(after);
  const runs = inBoth(was, is).flatMap((id) => {
    const [one, other] = [was.get(id), is.get(id)];
    const itself = compareThings('run', id, null, one && withoutTaps(one), other && withoutTaps(other));
    return one && other ? [...itself, ...compareLists('tap', byId(one.taps), byId(other.taps), id)] : itself;
  });
  return [...runs, ...compareOrder('run', was, is, null)];
}

function withoutTaps({ taps: _taps, ...run }: RunDocument): object {
  return run;
}

type Book = JobDocument['labourBook'];

function compareBooks(before: Book, after: Book): Difference[] {
  const book = compareOne('labour book', before && withoutActivities(before), after && withoutActivities(after));
  if (!before || !after) return book;
  const [was, is] = [new Map(Object.entries(before.activities)), new Map(Object.entries(after.activities))];
  return [...book, ...inBoth(was, is).flatMap((id) => compareThings('activity', id, null, was.get(id), is.get(id)))];
}

function withoutActivities({ activities: _activities, ...book }: NonNullable<Book>): object {
  return book;
}

function byId<T extends { id: string }>(things: readonly T[] = []): Map<string, T> {
  return new Map(things.map((thing) => [thing.id, thing]));
}
