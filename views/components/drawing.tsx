import type { ComponentChildren, JSX } from 'preact';

/** Holds a drawing at its own size; what does not fit scrolls in a region of its own, also by keyboard. */
export function Drawing({ label, children }: { label: string; children: ComponentChildren }): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1).
    <section class="drawing" tabIndex={0} aria-label={`${label}, scrolls sideways`}>
      {children}
    </section>
  );
}
