import type { PagerProps } from '../../../views/components/pager.tsx';

interface Paged {
  readonly items: readonly unknown[];
  readonly total: number;
  readonly page: number;
  readonly limit: number;
}

/** Where a list's pages lead; `query` holds the other choices of the address, empty ones left out. */
export function pagerOf(
  listed: Paged,
  things: string,
  path: string,
  query: Readonly<Record<string, string>> = {},
): PagerProps {
  const { items, total, page, limit } = listed;
  const first = items.length === 0 ? 0 : (page - 1) * limit + 1;
  const last = items.length === 0 ? 0 : first + items.length - 1;
  return {
    first,
    last,
    total,
    things,
    before: page > 1 ? withQuery(path, { ...query, page: String(page - 1) }) : null,
    after: page * limit < total ? withQuery(path, { ...query, page: String(page + 1) }) : null,
  };
}

/** `withQuery('/jobs', { q: 'quay', page: '' }) = '/jobs?q=quay'`. */
export function withQuery(path: string, query: Readonly<Record<string, string>>): string {
  const kept = Object.entries(query).filter(([, value]) => value !== '');
  return kept.length === 0 ? path : `${path}?${new URLSearchParams(kept).toString()}`;
}
