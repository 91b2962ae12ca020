const CELLS: Readonly<Record<string, string>> = {
  level: 'level',
  mountingHeightMm: 'mounting height',
  congestion: 'ceiling',
  liveArea: 'beside equipment in service',
  activity: 'activity',
  likely: 'likely hours of one',
  from: 'busway type it is',
  to: 'busway type it would be',
  type: 'busway type',
  lengthsMm: 'stock lengths',
  run: 'run',
  legsMm: 'leg lengths',
  dropMm: 'rod for each hanger',
};

const GROUPS: Readonly<Record<string, string>> = {
  conditions: 'Conditions',
  activities: 'Labour unit',
  types: 'Other type',
  stock: 'Stock lengths',
  routes: 'Route',
};

const HEAD: Readonly<Record<string, string>> = {
  policy: 'Factors of one line',
  nonProductivePercent: 'Non-productive, %',
  curve: 'Learning',
  learning: 'Learning',
  'learning.rate': 'Learning rate',
  'learning.referenceRepeat': 'Repeat that the base hours stand for',
  'factors.normalPercent': 'Normal ceiling, + %',
  'factors.tightPercent': 'Tight ceiling, + %',
  'factors.storeyPercentEach': 'Each storey above grade, + %',
  'factors.livePercent': 'Beside equipment in service, + %',
};

/** What the form of a what-if calls an entry, by its path. */
export function whatIfEntryWord(path: string): string {
  const [, group = '', row = '', cell = ''] = /^([a-z]+)\[(\d+)\]\.(\w+)$/.exec(path) ?? [];
  return group === '' ? (HEAD[path] ?? path) : `${GROUPS[group]}, row ${Number(row) + 1}: ${CELLS[cell] ?? cell}`;
}
