import type { ComponentChildren, JSX } from 'preact';
import { Button } from '../../components/button.tsx';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { ChosenRuns } from './carried.tsx';

/** What every form about several runs is given. */
export interface SeveralFormProps {
  readonly action: string;
  readonly csrf: string;
  readonly pickHref: string;
  readonly runs: readonly string[];
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
}

/** The form under what it would do, once that is known; its button then steps back behind that of the preview. */
export function SeveralForm(props: {
  readonly form: SeveralFormProps;
  readonly preview: JSX.Element | null;
  readonly ask: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  const { form, preview, ask, children } = props;
  return (
    <>
      <FormFaults faults={form.summary} />
      {preview}
      <Form action={form.action} csrf={form.csrf}>
        <ChosenRuns runs={form.runs} pickHref={form.pickHref} />
        {children}
        <Button {...(preview === null ? { kind: 'lead' as const } : {})}>{ask}</Button>
      </Form>
    </>
  );
}

/** A text field's props by its name. */
export function entryOf({ entered, faultOf }: SeveralFormProps) {
  return (name: string, label: string) => ({ name, label, value: entered[name] ?? '', ...faultProps(faultOf, name) });
}

/** A tick's props by its name. */
export function tickOf({ entered }: SeveralFormProps) {
  return (name: string, label: string) => ({
    name,
    label,
    ticked: entered[name] === 'yes' ? ('yes' as const) : ('no' as const),
  });
}
