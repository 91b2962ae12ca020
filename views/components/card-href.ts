export type CardOf = 'piece' | 'joint' | 'support' | 'tap';

const NOUNS: Readonly<Record<CardOf, string>> = {
  piece: 'pieces',
  joint: 'joints',
  support: 'hangers',
  tap: 'tap-offs',
};

/** Where the card of one thing is. `cardHref('7f2', 'support', 'a1') = '/jobs/7f2/hangers/a1'`. */
export function cardHref(jobId: string, of: CardOf, id: string): string {
  return `/jobs/${jobId}/${NOUNS[of]}/${id}`;
}
