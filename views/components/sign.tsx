import type { JSX } from 'preact';

export type SignOf = 'stop' | 'warning' | 'note' | 'done';

/** A small sign with a shape of its own for each severity; its word always stands beside it. */
export function Sign({ of }: { of: SignOf }): JSX.Element {
  return (
    <svg class="sign" width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" fill="none" stroke="currentColor">
      {strokes(of)}
    </svg>
  );
}

function strokes(of: SignOf): JSX.Element {
  switch (of) {
    case 'stop':
      return (
        <>
          <path d="M5.5 1h7L17 5.5v7L12.5 17h-7L1 12.5v-7z" fill="currentColor" stroke="none" />
          <path d="M4.5 9h9" stroke="var(--paper)" stroke-width="2.4" />
        </>
      );
    case 'warning':
      return <path d="M9 1.5 17 16.5H1zM9 6.5v5M9 13v1.800" stroke-width="1.8" />;
    case 'note':
      return <path d="M2 2h14v14H2zM9 8v5.5M9 4.5v1.800" stroke-width="1.6" />;
    case 'done':
      return <path d="M1.5 9.5 6.5 15 16.5 3" stroke-width="2.6" />;
  }
}
