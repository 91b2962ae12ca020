import type { NoDate } from '../../src/domain/ordering/need-dates.ts';
import type { Purpose } from '../../src/domain/ordering/order-list.ts';
import type { OrderItem } from '../../src/domain/ordering/ordering.ts';
import { takeoffItemWord, takeoffLineWords } from './takeoff-items.ts';

/** What a thing to order is called: "hanger", "rod washer". */
export function orderItemWord(item: OrderItem): string {
  if (item === 'washer') return 'rod washer';
  return item === 'brace' ? 'brace, by allowance' : takeoffItemWord(item);
}

/** A line of the order in words; what an estimator added says so. */
export function orderLineWords(line: {
  readonly item: OrderItem;
  readonly kind: string | null;
  readonly hand: string | null;
  readonly unit: string;
}): string {
  const { item, kind, hand, unit } = line;
  if (item === 'washer' || item === 'brace')
    return kind === null || item === 'brace' ? orderItemWord(item) : `${orderItemWord(item)} ${kind}`;
  if (item === 'slot-closure' && unit === 'each') return 'slot closure, strip';
  return takeoffLineWords({ item, kind, hand });
}

const PURPOSES: Readonly<Record<Purpose, string>> = {
  work: 'the work',
  waste: 'waste',
  spare: 'spare',
  owner: 'spare for the owner',
};

export function purposeWord({ purpose, byOwner }: { readonly purpose: Purpose; readonly byOwner: boolean }): string {
  return byOwner ? `${PURPOSES[purpose]}, the owner furnishes it` : PURPOSES[purpose];
}

const NO_DATES: Readonly<Record<NoDate, string>> = {
  'no-plan': 'no crew plan: no date',
  'no-hours': 'no hours are worked: no date',
  'no-crew': 'no crew of the plan has this work: no date',
  'by-hand': 'added by hand: no date',
};

/** Why there is no date. */
export function noDateWords(why: NoDate): string {
  return NO_DATES[why];
}
