import type { ComponentChildren, JSX } from 'preact';

export interface LiveProps {
  readonly id: string;
  /** Answers with this very element again, through the same component. */
  readonly href: string;
  readonly children: ComponentChildren;
}

/**
 * A part of the page that fetches itself again when anybody changes the job (the event `job-changed` of the page's
 * `liveUrl`). Morphed in place, so that focus and half-typed text stay. Without script it is simply as of the page.
 */
export function Live({ id, href, children }: LiveProps): JSX.Element {
  return (
    <div id={id} hx-get={href} hx-trigger="job-changed from:body delay:300ms" hx-swap="outerMorph">
      {children}
    </div>
  );
}
