import type { BesideLink } from '../../../../views/pages/field/beside.tsx';

interface Row {
  readonly id: string;
}

/** A mark without its run: "P03" of "F1-R1-A-P03". A tap-off's mark is its label. */
export function shortMark({ key }: { readonly key: string }, mark: string): string {
  return [`${key}-`, `${key} `].reduce(
    (left, start) => (left.startsWith(start) ? left.slice(start.length) : left),
    mark,
  );
}

/** The things before and after one along its run. */
export function alongOf<R extends Row & ({ readonly mark: string } | { readonly key: string })>(
  floor: { readonly key: string },
  rows: readonly R[],
  id: string,
  href: (row: R) => string,
): { readonly before: BesideLink | null; readonly after: BesideLink | null } {
  const place = rows.findIndex((row) => row.id === id);
  const link = (row: R | undefined) =>
    row === undefined || place < 0
      ? null
      : { href: href(row), mark: shortMark(floor, 'mark' in row ? row.mark : row.key) };
  return { before: link(rows[place - 1]), after: link(rows[place + 1]) };
}
