import { ACTIVITIES } from '../../domain/labour/result.ts';
import type { FactorName } from '../../domain/model.ts';
import { type EntryOf, number, text } from '../form/entries.ts';

export const FACTOR_NAMES: readonly FactorName[] = ['height', 'congestion', 'storey', 'live'];
export const CREW_ROWS = 8;
export const CONDITION_ROWS = 5;

/** The book's own version: `version` alone is, in every form, that of the record. */
export const BOOK_VERSION = 'bookVersion';

/** The entries of the book that are one value each, by their path in the document. */
export const HEAD_ENTRIES: readonly EntryOf[] = [
  text('policy'),
  number('factors.congestion.open'),
  number('factors.congestion.normal'),
  number('factors.congestion.tight'),
  number('factors.storeyPercentEach'),
  number('factors.livePercent'),
  number('learning.rate'),
  number('learning.referenceRepeat'),
  text('learning.over'),
  number('nonProductivePercent'),
  number('nonProductiveDay.lostHours'),
  number('nonProductiveDay.dayHours'),
  number('overtime.hoursPerWeek'),
  number('overtime.straightHours'),
  number('overtime.premium'),
  number('overtime.productivity'),
  number('correlation'),
  number('trials'),
  number('seed'),
];

export const POINTS = ['low', 'likely', 'high'] as const;

/** Unit and three points of each activity that a book can have. */
export const ACTIVITY_ENTRIES: readonly EntryOf[] = ACTIVITIES.flatMap((id) => [
  text(`activities.${id}.unit`),
  ...POINTS.map((point) => number(`activities.${id}.${point}`)),
]);
