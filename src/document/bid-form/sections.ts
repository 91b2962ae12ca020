import { TAXABLE, UNIT_ITEMS } from '../../domain/bid/bid-entries.ts';
import { type Entered, type EntryOf, money, number, text, tick } from '../form/entries.ts';
import type { BidDocument } from '../job-document.ts';

/** The entries of a bid are four forms, each small enough to be saved on its own. */
export type BidSection = 'price' | 'cost' | 'quotes' | 'offer';

type Key = keyof BidDocument;

/** Entries in rows; their fields are named `group[row].path`. */
export interface RowGroup {
  readonly group: Key | 'bond.scale';
  readonly entries: readonly EntryOf[];
  /** Fields that an empty row has as well. */
  readonly choices: readonly string[];
  /** Entries by which a row is known again when somebody else has changed the rows; none: only all rows together mean something. */
  readonly known: readonly string[];
  /** Answers of choices that the document may leave open: they show as this one, which nobody chose. */
  readonly usual?: Entered;
  /** Rows within a row: `quotes[0].lines[2].amount`. */
  readonly inner?: {
    readonly group: string;
    readonly entries: readonly EntryOf[];
    readonly choices: readonly string[];
    readonly known: readonly string[];
  };
}

export interface SectionOf {
  /** The entries of the bid that the form holds: all others stay as they are. */
  readonly keys: readonly Key[];
  readonly entries: readonly EntryOf[];
  readonly rows: readonly RowGroup[];
}

const lines = (path: string): EntryOf => ({ path, reading: { kind: 'lines' } });

const PRICE: SectionOf = {
  keys: [
    ...(['materials', 'wastePercent', 'spares', 'escalationPercent', 'freight', 'taxPercent', 'consumables'] as const),
    'ownerFurnished',
    ...(['consumablesPercent', 'other', 'supervision', 'permit', 'contingencyP', 'overheadPercent'] as const),
    ...(['bond', 'profit'] as const),
  ],
  entries: [
    money('materials'),
    number('wastePercent'),
    money('spares'),
    ...UNIT_ITEMS.map((item) => tick(`ownerFurnished.${item}`)),
    number('escalationPercent'),
    money('freight'),
    number('taxPercent'),
    money('consumables'),
    number('consumablesPercent'),
    money('other'),
    money('supervision'),
    money('permit'),
    number('contingencyP'),
    number('overheadPercent'),
    text('bond.of'),
    number('bond.percent'),
    text('profit.kind'),
    number('profit.percent'),
  ],
  rows: [{ group: 'bond.scale', entries: [money('amount'), number('percent')], choices: [], known: [] }],
};

const COST: SectionOf = {
  keys: ['timed', 'subcontracts', 'taxes'],
  entries: [],
  rows: [
    {
      group: 'timed',
      entries: [
        text('item'),
        text('goesTo'),
        number('number'),
        number('time'),
        text('per'),
        money('rate'),
        money('once'),
      ],
      choices: ['goesTo', 'per'],
      known: ['item'],
      usual: { goesTo: 'equipment' },
    },
    {
      group: 'subcontracts',
      entries: [text('item'), text('work'), money('amount')],
      choices: ['work'],
      known: ['item'],
      usual: { work: 'other' },
    },
    {
      group: 'taxes',
      entries: [text('name'), number('percent'), ...TAXABLE.map((line) => tick(`on.${line}`))],
      choices: [],
      known: ['name'],
    },
  ],
};

const QUOTES: SectionOf = {
  keys: ['quotes'],
  entries: [],
  rows: [
    {
      group: 'quotes',
      entries: [
        text('id'),
        text('package'),
        text('goesTo'),
        text('supplier'),
        text('date'),
        text('validUntil'),
        text('currency'),
        text('freight'),
        money('freightAmount'),
        text('tax'),
        money('taxAmount'),
        tick('firm'),
        tick('chosen'),
        text('note'),
      ],
      choices: ['goesTo'],
      known: ['id'],
      usual: { goesTo: 'materials' },
      inner: {
        group: 'lines',
        entries: [text('item'), text('detail'), text('state'), money('amount')],
        choices: ['state'],
        known: ['item', 'detail'],
      },
    },
  ],
};

const OFFER: SectionOf = {
  keys: [
    ...(['date', 'validUntil', 'estimateClass', 'alternates', 'unitPrices'] as const),
    ...(['inclusions', 'exclusions', 'qualifications', 'addenda'] as const),
  ],
  entries: [
    text('date'),
    text('validUntil'),
    number('estimateClass'),
    lines('inclusions'),
    lines('exclusions'),
    lines('qualifications'),
  ],
  rows: [
    {
      group: 'alternates',
      entries: [
        text('name'),
        text('kind'),
        money('materials'),
        number('hours'),
        money('subcontracts'),
        money('other'),
        text('note'),
      ],
      choices: ['kind'],
      known: ['name'],
    },
    { group: 'unitPrices', entries: [text('item'), money('material'), money('offered')], choices: [], known: ['item'] },
    { group: 'addenda', entries: [text('number'), text('date'), text('note')], choices: [], known: ['number'] },
  ],
};

export const BID_SECTIONS: Readonly<Record<BidSection, SectionOf>> = {
  price: PRICE,
  cost: COST,
  quotes: QUOTES,
  offer: OFFER,
};
