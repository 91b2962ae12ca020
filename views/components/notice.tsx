import type { ComponentChildren, JSX } from 'preact';
import { Sign } from './sign.tsx';

export interface NoticeProps {
  readonly kind: 'done' | 'stop' | 'note';
  readonly text: string;
  /** A form that takes it back. */
  readonly undo?: ComponentChildren;
}

/** Says what was just done, or why it was not. */
export function Notice({ kind, text, undo }: NoticeProps): JSX.Element {
  return (
    <div class={`notice ${kind}`} role={kind === 'stop' ? 'alert' : 'status'}>
      <Sign of={kind} />
      <span>{text}</span>
      {undo}
    </div>
  );
}
