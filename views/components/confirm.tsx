import type { ComponentChildren, JSX } from 'preact';
import { Button } from './button.tsx';
import { Form, type FormProps } from './form.tsx';

export interface ConfirmProps extends Omit<FormProps, 'children' | 'keep' | 'withFiles'> {
  /** On the button that asks: "Remove run". */
  readonly ask: string;
  /** What will happen and what can be undone. */
  readonly question: string;
  /** On the button that does it: "Remove L2-R03-A". */
  readonly answer: string;
  /** More fields, as a reason. */
  readonly children?: ComponentChildren;
}

/** Asks once before something is taken away. Opens in place, without script. */
export function Confirm({ ask, question, answer, children, ...form }: ConfirmProps): JSX.Element {
  return (
    <details class="ask">
      <summary class="button stops">{ask}</summary>
      <Form {...form}>
        <p>{question}</p>
        {children}
        <Button kind="stops">{answer}</Button>
      </Form>
    </details>
  );
}
