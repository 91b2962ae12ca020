import type { Part } from './columns.ts';

/** A row with one value: what it is called in the sheet, and where it stands in the document. */
export interface SingleValue {
  readonly part: Part;
  readonly name: string;
  readonly path: string;
  readonly kind: 'text' | 'number' | 'activities';
}

const of = (part: Part, name: string, path: string, kind: SingleValue['kind'] = 'number'): SingleValue => ({
  part,
  name,
  path,
  kind,
});

/** The currency of the crew's rates stands in the sheet, so that no other job takes them for its own money. */
export const CURRENCY = 'currency';

export const SINGLE_VALUES: readonly SingleValue[] = [
  of('book', 'version', 'version', 'text'),
  of('book', 'factors add or compound', 'policy', 'text'),
  of('book', 'non-productive %', 'nonProductivePercent'),
  of('book', 'hours lost of a day', 'nonProductiveDay.lostHours'),
  of('book', 'hours of a working day', 'nonProductiveDay.dayHours'),
  of('condition', 'open ceiling %', 'factors.congestion.open'),
  of('condition', 'normal ceiling %', 'factors.congestion.normal'),
  of('condition', 'tight ceiling %', 'factors.congestion.tight'),
  of('condition', 'each storey %', 'factors.storeyPercentEach'),
  of('condition', 'beside equipment in service %', 'factors.livePercent'),
  of('learning', 'rate', 'learning.rate'),
  of('learning', 'repeat of the base hours', 'learning.referenceRepeat'),
  of('learning', 'over run or level', 'learning.over', 'text'),
  of('learning', 'activities', 'learning.activities', 'activities'),
  of('overtime', 'hours a week', 'overtime.hoursPerWeek'),
  of('overtime', 'straight hours', 'overtime.straightHours'),
  of('overtime', 'premium', 'overtime.premium'),
  of('overtime', 'productivity', 'overtime.productivity'),
  of('range', 'correlation', 'correlation'),
  of('range', 'trials', 'trials'),
  of('range', 'seed', 'seed'),
];
