import type { ComponentChildren, JSX } from 'preact';
import { Mark } from './mark.tsx';

export interface Step {
  readonly what: string;
  readonly state: 'done' | 'next' | 'later';
  /** Who and when, or why it must wait. */
  readonly remark?: ComponentChildren;
  /** The form of the next step. */
  readonly form?: ComponentChildren;
}

/** Steps of work as rows, the next one large with its form; for one hand. */
export function StepList({ steps, label }: { steps: readonly Step[]; label: string }): JSX.Element {
  return (
    <ol class="steps" aria-label={label}>
      {steps.map((step) => (
        <li key={step.what} class={step.state} aria-current={step.state === 'next' ? 'step' : undefined}>
          <div>
            <div class="what">{step.what}</div>
            <div class="row">
              {step.state === 'done' && <Mark state="accepted" word="done" />}
              {step.state === 'later' && <Mark state="planned" word="later" />}
              {step.remark !== undefined && <span class="hint">{step.remark}</span>}
            </div>
            {step.form}
          </div>
        </li>
      ))}
    </ol>
  );
}
