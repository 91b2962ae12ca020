import type { JSX } from 'preact';
import { InkedBox, inksFor } from '../drawings/ink.tsx';
import { lookOf, STATES, type WorkState } from '../drawings/states.ts';

/** How far along one thing is: the same ink as on the strip, and its word. */
export function Mark({ state, word }: { state: WorkState; word?: string }): JSX.Element {
  const look = lookOf(state);
  return (
    <span class="marked">
      <svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true">
        <InkedBox box={{ x: 2, y: 1, width: 22, height: 12 }} ink={look.ink} inks={inksFor('screen')} />
      </svg>
      {word ?? look.word}
    </span>
  );
}

/** What the inks mean, for the foot of a drawing. */
export function MarkLegend({ of }: { of: keyof typeof STATES }): JSX.Element {
  return (
    <ul class="legend">
      {STATES[of].map((state) => (
        <li key={state}>
          <Mark state={state} />
        </li>
      ))}
    </ul>
  );
}
