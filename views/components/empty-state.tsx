import type { ComponentChildren, JSX } from 'preact';

/** Where nothing is yet: what would stand here, and the next step as `children`. */
export function EmptyState({ text, children }: { text: string; children?: ComponentChildren }): JSX.Element {
  return (
    <div class="empty">
      <p>{text}</p>
      {children}
    </div>
  );
}
