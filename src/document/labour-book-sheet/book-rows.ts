import { ACTIVITIES } from '../../domain/labour/result.ts';
import { writeMoney } from '../../domain/units/money.ts';
import { valueAt } from '../form/write-entry.ts';
import type { LabourBookDocument, ProjectDocument } from '../job-document.ts';
import { writeMm } from '../lists/write-mm.ts';
import type { BookColumn, Part } from './columns.ts';
import { CURRENCY, SINGLE_VALUES } from './single-values.ts';

export type BookProject = Pick<ProjectDocument, 'units' | 'currency'>;
export type BookRow = { readonly part: Part; readonly name: string } & {
  readonly [Name in Exclude<BookColumn, 'part' | 'name'>]?: string;
};

/** What stands in a cell that lists nothing, where an empty cell would mean that nothing is said. */
export const NONE = 'none';

/** A labour book as the rows of its sheet: what has no value has no row. `readBookSheet` makes the same book of them. */
export function bookRows(book: LabourBookDocument, project: BookProject): readonly BookRow[] {
  const single = singleRows(book);
  const ofPart = (part: Part) => single.filter((row) => row.part === part);
  return [
    ...ofPart('book'),
    ...((book.crew ?? []).length > 0 ? [{ part: 'book' as const, name: CURRENCY, value: project.currency }] : []),
    ...activityRows(book, project),
    ...ofPart('condition'),
    ...(book.factors?.height ?? []).map(({ overMm, percent }) => ({
      part: 'over height' as const,
      name: 'mounting height %',
      length: writeMm(overMm, project.units),
      value: String(percent),
    })),
    ...(book.jobConditions ?? []).map(({ name, percent, activities }) => ({
      part: 'job condition' as const,
      name,
      value: String(percent),
      ...(activities === undefined ? {} : { conditions: listed(activities) }),
    })),
    ...ofPart('learning'),
    ...crewRows(book, project),
    ...ofPart('overtime'),
    ...ofPart('range'),
  ];
}

function singleRows(book: LabourBookDocument): BookRow[] {
  return SINGLE_VALUES.flatMap(({ part, name, path }) => {
    const value = valueAt(book, path);
    if (value === undefined) return [];
    return [{ part, name, value: Array.isArray(value) ? listed(value) : String(value) }];
  });
}

function activityRows({ activities }: LabourBookDocument, { units }: BookProject): BookRow[] {
  const known: readonly string[] = ACTIVITIES;
  const strange = Object.keys(activities).filter((id) => !known.includes(id));
  return [...known, ...strange].flatMap((name): BookRow[] => {
    const activity = activities[name];
    if (activity === undefined) return [];
    const { unit, factors, bands = [] } = activity;
    const conditions = factors === undefined ? {} : { conditions: listed(factors) };
    return [
      { part: 'activity', name, unit, ...points(activity), ...conditions },
      ...bands.map((band) => ({
        part: band.upToA === undefined ? ('by length' as const) : ('by rating' as const),
        name,
        ...(band.upToA === undefined ? {} : { rating: String(band.upToA) }),
        ...(band.upToMm === undefined ? {} : { length: writeMm(band.upToMm, units) }),
        ...points(band),
      })),
    ];
  });
}

function points({ low, likely, high }: { low: number; likely: number; high: number }) {
  return { low: String(low), likely: String(likely), high: String(high) };
}

function crewRows({ crew = [] }: LabourBookDocument, { currency }: BookProject): BookRow[] {
  return crew.map(({ role, number, ratePerHour, effectiveness, burdenPercent }) => ({
    part: 'crew',
    name: role,
    number: String(number),
    rate: writeMoney(ratePerHour, currency),
    effectiveness: String(effectiveness),
    ...(burdenPercent === undefined ? {} : { burden: String(burdenPercent) }),
  }));
}

function listed(names: readonly unknown[]): string {
  return names.length === 0 ? NONE : names.join('; ');
}
