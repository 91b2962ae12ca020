import type { ComponentChildren } from 'preact';
import { Button } from '../../../components/button.tsx';
import { TextArea } from '../../../components/field.tsx';
import type { EndsPageProps } from '../ends.tsx';
import { entriesOf } from '../entries.ts';
import { RunForm } from './run-form.tsx';

export function Opening(
  props: EndsPageProps & { readonly form: string; readonly ask: string; readonly children?: ComponentChildren },
) {
  const { form, ask, trouble, freshId, viewer, children } = props;
  if (!viewer.mayInstall && !viewer.mayAccept) return null;
  const entries = entriesOf(trouble, form, freshId);
  return (
    <details class="ask" open={trouble?.form === form}>
      <summary class="button stops">{ask}</summary>
      <RunForm
        {...props}
        entries={entries}
        does={form.startsWith('open-slot') ? 'open-slot' : 'open-end'}
        form={form}
        label={ask}
      >
        {children}
        <TextArea {...entries.text('reason')} label="Why it was opened" need="required" rows={3} />
        <p>Tests of everything connected to this run count no longer.</p>
        <Button kind="stops">It is open</Button>
      </RunForm>
    </details>
  );
}
