const WORDS: Readonly<Record<string, string>> = {
  plan: 'Need dates are those of',
  cordStockMm: 'Cords are made in',
  'closure.stockMm': 'Length of a closure strip',
  'closure.wastePercent': 'Waste on closure strip',
  washersPerRod: 'Washers on one rod',
  braceEverySupports: 'Hangers to one brace',
};

const GROUPS: Readonly<Record<string, string>> = {
  spares: 'Rule',
  leadDays: 'Lead time',
  tools: 'Tool',
  extras: 'Line',
};

const FIELDS: Readonly<Record<string, string>> = {
  item: 'item',
  type: 'busway type',
  kind: 'kind',
  hand: 'hand',
  lengthMm: 'length',
  wastePercent: 'waste',
  percent: 'spares',
  minimum: 'at least',
  ownerSpares: 'owner’s',
  days: 'days',
  tool: 'tool',
  perCrew: 'for a crew',
  activity: 'needed for',
  crews: 'crews, by hand',
  note: 'note',
  level: 'level',
  quantity: 'quantity',
  unit: 'unit',
  price: 'price of one',
  hours: 'hours of one',
};

/** What the forms of ordering call an entry: "Rule 2, spares". */
export function orderingEntryWord(field: string): string {
  const [, group = '', row = '', name = ''] = /^(\w+)\[(\d+)\]\.(.+)$/.exec(field) ?? [];
  if (group === '') return WORDS[field] ?? field;
  return `${GROUPS[group] ?? group} ${Number(row) + 1}, ${FIELDS[name] ?? name}`;
}
