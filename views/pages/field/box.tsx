import type { JSX } from 'preact';

/** An empty box to tick by hand. */
export function Box(): JSX.Element {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
      <rect x="1" y="1" width="16" height="16" fill="none" stroke="currentColor" stroke-width="1.5" />
    </svg>
  );
}

/** A line to write on, with what belongs there under it. */
export function Line({ of }: { of: string }): JSX.Element {
  return (
    <span class="write">
      <span class="hint">{of}</span>
    </span>
  );
}
