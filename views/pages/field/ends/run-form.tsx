import type { ComponentChildren, JSX } from 'preact';
import { Form } from '../../../components/form.tsx';
import type { EndsPageProps } from '../ends.tsx';
import type { Entries } from '../entries.ts';

/** A form about the run as a whole. */
export function RunForm(
  props: Pick<EndsPageProps, 'action' | 'csrf' | 'version' | 'runKey'> & {
    readonly entries: Entries;
    readonly does: string;
    readonly form: string;
    readonly label: string;
    readonly children: ComponentChildren;
  },
): JSX.Element {
  const { action, csrf, version, runKey, entries, does, form, label, children } = props;
  return (
    <Form
      action={action}
      csrf={csrf}
      submissionId={entries.submissionId}
      version={version}
      keep={{ label: `${runKey}, ${label}` }}
    >
      <input type="hidden" name="do" value={does} />
      <input type="hidden" name="form" value={form} />
      {children}
    </Form>
  );
}
