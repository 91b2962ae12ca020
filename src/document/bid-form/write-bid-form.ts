import type { Entered } from '../form/entries.ts';
import { writeFragment } from '../form/fragment-form.ts';
import { valueAt } from '../form/write-entry.ts';
import type { BidDocument, ProjectDocument } from '../job-document.ts';
import { BID_SECTIONS, type BidSection, type RowGroup } from './sections.ts';

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

/** One of the forms of a bid as texts, by the names of its fields. */
export function writeBidForm(bid: BidDocument, project: Project, section: BidSection): Entered {
  const { entries, rows } = BID_SECTIONS[section];
  return Object.assign(
    {},
    writeFragment({ ...bid, ownerFurnished: ticksOf(bid.ownerFurnished ?? []) }, entries, project),
    ...rows.map((group) => writeRows(bid, group, project)),
  );
}

function writeRows(bid: BidDocument, { group, entries, inner }: RowGroup, project: Project): Entered {
  return Object.assign(
    {},
    ...listOf(valueAt(bid, group)).flatMap((item, row) => {
      const own = named(`${group}[${row}]`, writeFragment(shown(item), entries, project));
      if (inner === undefined) return [own];
      const within = listOf(Reflect.get(item, inner.group)).map((line, place) =>
        named(`${group}[${row}].${inner.group}[${place}]`, writeFragment(line, inner.entries, project)),
      );
      return [own, ...within];
    }),
  );
}

/** The base of a tax is a list in the document and a tick each in the form. */
function shown(item: object): object {
  if (!('on' in item) || !Array.isArray(item.on)) return item;
  return { ...item, on: ticksOf(item.on) };
}

function ticksOf(list: readonly unknown[]): object {
  return Object.fromEntries(list.map((one) => [String(one), true]));
}

function listOf(value: unknown): readonly object[] {
  return Array.isArray(value) ? value : [];
}

function named(place: string, texts: Entered): Entered {
  return Object.fromEntries(Object.entries(texts).map(([path, said]) => [`${place}.${path}`, said]));
}
