import type { QuotedItem } from './bid-entries.ts';

const WORDS: Readonly<Record<QuotedItem, string>> = {
  lot: 'the lot',
  section: 'sections',
  elbow: 'elbows',
  tee: 'tees',
  'joint-kit': 'joint kits',
  clamp: 'clamps',
  'contact-set': 'contact sets',
  bolt: 'bolts',
  'end-feed': 'end feeds',
  'end-cap': 'end caps',
  'slot-closure': 'slot closure',
  support: 'hangers',
  rod: 'rod',
  anchor: 'anchors',
  tap: 'tap-offs',
  drop: 'drop cords',
  'fire-seal': 'fire seals',
  label: 'labels',
  tool: 'tools',
  'field-service': 'field service',
  drawings: 'drawings',
  tests: 'tests',
  other: 'something else',
};

/** What people call a line of a quote. `itemWord('tap') = 'tap-offs'`. */
export function itemWord(item: QuotedItem): string {
  return WORDS[item];
}

/** A line by its own detail, or else by what it is. */
export function quoteLineWord({ item, detail }: { readonly item: QuotedItem; readonly detail: string | null }): string {
  if (detail === null) return itemWord(item);
  return item === 'other' || item === 'lot' ? detail : `${itemWord(item)}, ${detail}`;
}
