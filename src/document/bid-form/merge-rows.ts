import type { Entered, EntryOf } from '../form/entries.ts';
import { filledRows } from './filled-rows.ts';
import { type MergedEntries, type MergeOf, plainText } from './merged-entries.ts';

interface RowsOf {
  readonly group: string;
  readonly entries: readonly EntryOf[];
  readonly choices: readonly string[];
  /** The entries by which a row is known again. */
  readonly known: readonly string[];
  readonly usual: Entered;
  readonly inner: Omit<RowsOf, 'inner'> | null;
}

/** A row with its fields named within it. */
interface Row {
  readonly place: number;
  readonly name: string;
  readonly fields: Entered;
}

/**
 * Rows of a form that two people changed. Theirs are known again by their name, one's own by their place in the form, which
 * was made of the same rows. Rows that either added stay; of one that both changed, each field is merged by itself.
 */
export function mergeRows(of: RowsOf, { was, mine, theirs }: MergeOf): MergedEntries {
  const [old, own, other] = [rowsOf(of, was), rowsOf(of, mine), rowsOf(of, theirs)];
  const oldOf = (row: Row) => old.find(({ name }) => name === row.name) ?? null;
  const added = own.filter(({ place }) => !old.some((row) => row.place === place));
  const ownOf = (row: Row, before: Row | null) =>
    before === null ? added.find(({ name }) => name === row.name) : own.find(({ place }) => place === before.place);
  const used = new Set<Row>();
  const placed = other.map((row) => {
    const before = oldOf(row);
    const one = ownOf(row, before) ?? null;
    if (one !== null) used.add(one);
    return at(of, row.place, mergeRow(of, before, one, row));
  });
  const first = Math.max(-1, ...other.map(({ place }) => place)) + 1;
  const rest = own.filter((row) => !used.has(row)).flatMap((row) => leftOver(of, row, old));
  return [...placed, ...rest.map((merged, index) => at(of, first + index, merged))].reduce(
    (all, one) => ({ fields: { ...all.fields, ...one.fields }, conflicts: [...all.conflicts, ...one.conflicts] }),
    { fields: {}, conflicts: [] },
  );
}

/** Rows by their place; the second of a name is known as the second. */
function rowsOf({ group, choices, known, inner }: RowsOf, entered: Entered): readonly Row[] {
  const seen = new Map<string, number>();
  return filledRows(entered, group, [...choices, ...(inner?.choices ?? [])]).map((place) => {
    const start = `${group}[${place}].`;
    const fields = Object.fromEntries(
      Object.entries(entered).flatMap(([field, text]) =>
        field.startsWith(start) ? [[field.slice(start.length), text]] : [],
      ),
    );
    const called = known.map((cell) => plainText(fields[cell]).toLowerCase()).join('\n');
    const count = (seen.get(called) ?? 0) + 1;
    seen.set(called, count);
    return { place, name: `${called}\n${count}`, fields };
  });
}

/** A row of theirs: new, or changed, or one that I took out. Fields are named within the row. */
function mergeRow(of: RowsOf, before: Row | null, own: Row | null, row: Row): MergedEntries {
  if (own === null && before === null) return { fields: row.fields, conflicts: [] };
  if (own === null) {
    const isTouched = before !== null && !isSameRow(of, before.fields, row.fields);
    return { fields: {}, conflicts: isTouched ? [clash(of, null, row)] : [] };
  }
  const sides = { was: before?.fields ?? {}, mine: own.fields, theirs: row.fields };
  const cells = of.entries.map(({ path }) => mergeCell(path, of.usual, before?.fields ?? null, own.fields, row.fields));
  const within = of.inner === null ? { fields: {}, conflicts: [] } : mergeRows({ ...of.inner, inner: null }, sides);
  return {
    fields: { ...Object.fromEntries(cells.map(({ field, text }) => [field, text])), ...within.fields },
    conflicts: [...cells.flatMap(({ conflict }) => (conflict === null ? [] : [conflict])), ...within.conflicts],
  };
}

/** A row of mine that they do not have: my new one, or one that they took out, which stays only if I changed it. */
function leftOver(of: RowsOf, row: Row, old: readonly Row[]): readonly MergedEntries[] {
  const before = old.find(({ place }) => place === row.place);
  if (before === undefined) return [{ fields: row.fields, conflicts: [] }];
  if (isSameRow(of, before.fields, row.fields)) return [];
  return [{ fields: row.fields, conflicts: [clash(of, row, null)] }];
}

/** `was` is null in a row that both added: nothing of it stood there before, not even the usual answer of a choice. */
function mergeCell(field: string, usual: Entered, was: Entered | null, mine: Entered, theirs: Entered) {
  const old = was === null ? '' : answerOf(was, field, usual);
  const [own, other] = [answerOf(mine, field, usual), answerOf(theirs, field, usual)];
  if (own === old) return { field, text: theirs[field] ?? '', conflict: null };
  const conflict = other !== old && own !== other ? { field, mine: own, theirs: other } : null;
  return { field, text: mine[field] ?? '', conflict };
}

function answerOf(fields: Entered, field: string, usual: Entered): string {
  return plainText(fields[field]) || (usual[field] ?? '');
}

function isSameRow({ entries, usual, inner }: RowsOf, a: Entered, b: Entered): boolean {
  if (!entries.every(({ path }) => answerOf(a, path, usual) === answerOf(b, path, usual))) return false;
  if (inner === null) return true;
  const [lines, others] = [rowsOf({ ...inner, inner: null }, a), rowsOf({ ...inner, inner: null }, b)];
  return (
    lines.length === others.length &&
    lines.every(({ fields }, i) => isSameRow({ ...inner, inner: null }, fields, others[i]?.fields ?? {}))
  );
}

/** One took out what the other changed: told by the name of the row. */
function clash(
  { known: [cell = ''] }: RowsOf,
  mine: Row | null,
  theirs: Row | null,
): MergedEntries['conflicts'][number] {
  return { field: cell, mine: plainText(mine?.fields[cell]), theirs: plainText(theirs?.fields[cell]) };
}

function at({ group }: RowsOf, place: number, { fields, conflicts }: MergedEntries): MergedEntries {
  const named = (field: string) => `${group}[${place}].${field}`;
  return {
    fields: Object.fromEntries(Object.entries(fields).map(([field, text]) => [named(field), text])),
    conflicts: conflicts.map((conflict) => ({ ...conflict, field: named(conflict.field) })),
  };
}
