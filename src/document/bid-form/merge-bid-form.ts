import type { Entered, EntryOf } from '../form/entries.ts';
import { filledRows } from './filled-rows.ts';
import { mergeRows } from './merge-rows.ts';
import { isSameText, type MergedEntries, type MergeOf, plainText } from './merged-entries.ts';
import { BID_SECTIONS, type BidSection, type RowGroup } from './sections.ts';

/**
 * A form of a bid after somebody else saved first: what only one of the two changed is taken from whoever changed it, rows
 * that either added stay, and what both changed is told and holds one's own. Rows stand where theirs do, one's own new ones
 * behind them, so that the form can be merged once more.
 */
export function mergeBidForm(section: BidSection, of: MergeOf): MergedEntries {
  const { entries, rows } = BID_SECTIONS[section];
  return [
    ...entryUnits(entries).map((unit) => mergeUnit(unit, of)),
    ...rows.map((group) => mergeGroup(group, of)),
  ].reduce(
    (all, one) => ({ fields: { ...all.fields, ...one.fields }, conflicts: [...all.conflicts, ...one.conflicts] }),
    { fields: {}, conflicts: [] },
  );
}

/** Fields that say something only together are merged together: 6 of a margin is not 6 of a markup. */
function entryUnits(entries: readonly EntryOf[]): readonly (readonly EntryOf[])[] {
  const units = new Map<string, EntryOf[]>();
  for (const entry of entries) {
    const [head = entry.path] = entry.path.split('.');
    const unit = entry.reading.kind === 'tick' ? entry.path : head;
    units.set(unit, [...(units.get(unit) ?? []), entry]);
  }
  return [...units.values()];
}

function mergeUnit(unit: readonly EntryOf[], { was, mine, theirs }: MergeOf): MergedEntries {
  const [first] = unit;
  if (unit.length === 1 && first?.reading.kind === 'lines') return mergeLines(first.path, { was, mine, theirs });
  return wholly(
    unit.map(({ path }) => path),
    { was, mine, theirs },
  );
}

/** All of the fields from one of the two; one's own where both changed any of them. */
function wholly(names: readonly string[], { was, mine, theirs }: MergeOf): MergedEntries {
  const isSame = (a: Entered, b: Entered) => names.every((name) => isSameText(a[name], b[name]));
  const from = isSame(mine, was) ? theirs : mine;
  const isClash = from === mine && !isSame(theirs, was);
  return {
    fields: Object.fromEntries(names.map((name) => [name, from[name] ?? ''])),
    conflicts: names
      .filter((name) => isClash && !isSameText(mine[name], theirs[name]))
      .map((field) => ({ field, mine: plainText(mine[field]), theirs: plainText(theirs[field]) })),
  };
}

/** Sentences one a line: theirs that are new come behind one's own, and what they took out is out. */
function mergeLines(field: string, { was, mine, theirs }: MergeOf): MergedEntries {
  const linesOf = (text: string | undefined) =>
    plainText(text)
      .split('\n')
      .filter((line) => line.trim() !== '');
  const [old, own, other] = [linesOf(was[field]), linesOf(mine[field]), linesOf(theirs[field])];
  const kept = own.filter((line) => !old.includes(line) || other.includes(line));
  const added = other.filter((line) => !old.includes(line) && !own.includes(line));
  return { fields: { [field]: [...kept, ...added].join('\n') }, conflicts: [] };
}

/** Rows that have a name are merged by it; the steps of a scale mean something only in their order, and stay together. */
function mergeGroup(group: RowGroup, of: MergeOf): MergedEntries {
  const { group: name, entries, choices, inner, known, usual = {} } = group;
  if (known.length > 0)
    return mergeRows(
      { group: name, entries, choices, known, usual, inner: inner === undefined ? null : { ...inner, usual: {} } },
      of,
    );
  const places = [of.was, of.mine, of.theirs].flatMap((one) => filledRows(one, name, choices));
  const fields = [...new Set(places)].flatMap((row) => entries.map(({ path }) => `${name}[${row}].${path}`));
  return wholly(fields, of);
}
