import { itemWord } from '../../../domain/bid/item-words.ts';
import type { BidResult } from '../../../domain/bid/result.ts';
import type { TableSheet } from '../table-sheet.ts';
import type { Frame } from './frame.ts';

/** What goes with a price, one entry a row; an empty list says that it is empty. */
export function termsSheet({ title }: Frame, { terms }: BidResult): TableSheet {
  const addenda = terms.addenda.map(({ number, date, note }) =>
    [`No. ${number}`, date === null ? null : `of ${date}`, note].filter((part) => part !== null).join(', '),
  );
  const lists: readonly (readonly [string, readonly string[], string])[] = [
    ['Day of the bid', [terms.date ?? 'not stated'], ''],
    ['Holds until', [terms.validUntil ?? 'not stated'], ''],
    ['Included', terms.inclusions, 'Nothing is listed.'],
    ...(terms.ownerFurnished.length === 0
      ? []
      : [['Furnished by the owner, installed by us', terms.ownerFurnished.map(itemWord), ''] as const]),
    ['Not included', terms.exclusions, 'Nothing is listed.'],
    ['Qualifications', terms.qualifications, 'None.'],
    ['Addenda received and allowed for', addenda, 'None.'],
  ];
  return {
    name: 'Terms',
    title: `${title} – what goes with the price`,
    columns: [
      { head: 'What', width: 36 },
      { head: 'Words', width: 70, wraps: true },
    ],
    rows: lists.flatMap(([what, words, none]) => (words.length === 0 ? [none] : words).map((word) => [what, word])),
  };
}
