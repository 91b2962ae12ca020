import type { Columns } from '../lists/columns.ts';

/** The columns of a labour book's sheet: one kind of row for all of it, and each part fills the cells that it has. */
export const BOOK_COLUMNS = {
  names: {
    part: ['section'],
    name: ['activity', 'role'],
    rating: ['rated current', 'up to a'],
    length: ['over', 'up to'],
    unit: [],
    low: ['low hours'],
    likely: ['likely hours'],
    high: ['high hours'],
    conditions: ['factors'],
    value: ['percent'],
    number: ['how many'],
    rate: ['rate per hour'],
    effectiveness: ['effective'],
    burden: ['burden percent'],
  },
  required: ['part', 'name'],
} as const satisfies Columns<string>;

export type BookColumn = keyof (typeof BOOK_COLUMNS)['names'];

export const BOOK_HEADINGS: readonly BookColumn[] = [
  'part',
  'name',
  'length',
  'unit',
  'low',
  'likely',
  'high',
  'conditions',
  'value',
  'number',
  'rate',
  'effectiveness',
  'burden',
  'rating',
];

/** What a spreadsheet may add up; every other column is text. */
export const FIGURE_COLUMNS: ReadonlySet<BookColumn> = new Set([
  'rating',
  'low',
  'likely',
  'high',
  'number',
  'rate',
  'effectiveness',
  'burden',
]);

export const PARTS = [
  'book',
  'activity',
  'by length',
  'by rating',
  'condition',
  'over height',
  'job condition',
  'learning',
  'crew',
  'overtime',
  'range',
] as const;
export type Part = (typeof PARTS)[number];
