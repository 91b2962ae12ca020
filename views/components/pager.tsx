import type { JSX } from 'preact';

export interface PagerProps {
  readonly first: number;
  readonly last: number;
  /** null: not counted, there are more. */
  readonly total: number | null;
  /** What is paged, in the plural: "runs". */
  readonly things: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** Which rows these are, and the way to the ones before and after. */
export function Pager({ first, last, total, things, before, after }: PagerProps): JSX.Element {
  return (
    <nav class="pager" aria-label={`Pages of ${things}`}>
      <span>
        {things} {first} to {last}
        {total !== null && ` of ${total}`}
      </span>
      {before !== null && (
        <a class="button" href={before} rel="prev">
          Earlier {things}
        </a>
      )}
      {after !== null && (
        <a class="button" href={after} rel="next">
          Further {things}
        </a>
      )}
    </nav>
  );
}
