import type { JSX } from 'preact';
import { Button } from '../../../components/button.tsx';
import { SelectField, TextArea } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { entriesOf } from '../entries.ts';
import type { JointPageProps } from '../joint.tsx';

/** Opens the joint again from a step on, with the reason; what was done stays in the history. */
export function Reopening(props: JointPageProps & { readonly action: string }): JSX.Element | null {
  const { card, action, csrf, joint, trouble, freshId, viewer, run } = props;
  const begun = card.steps.some(({ done }) => done !== null);
  if (!begun || !(viewer.mayInstall || viewer.mayAccept)) return null;
  const entries = entriesOf(trouble, 'reopen', freshId);
  return (
    <details class="ask" id="reopen" open={trouble?.form === 'reopen'}>
      <summary class="button stops">Reopen the joint</summary>
      <Form
        action={action}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={joint.version}
        keep={{ label: `${run.mark} ${joint.mark}, reopened` }}
      >
        <input type="hidden" name="do" value="reopen" />
        <p>
          The steps from the chosen one on are done again, at least from the hold point. Tests of everything connected
          to it count no longer.
        </p>
        <TextArea {...entries.text('reason')} label="What is wrong" need="required" rows={3} />
        <SelectField
          {...entries.text('fromStep', '0')}
          label="Do again from"
          options={card.steps.map(({ index, text }) => ({ value: String(index), word: `${index + 1} ${short(text)}` }))}
        />
        <Button kind="stops">Reopen joint {joint.mark}</Button>
      </Form>
    </details>
  );
}

function short(text: string): string {
  return text.length > 60 ? `${text.slice(0, 58)}…` : text;
}
