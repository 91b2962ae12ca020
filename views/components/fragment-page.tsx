import type { ComponentChildren, JSX } from 'preact';
import { Button, ButtonLink } from './button.tsx';
import { Confirm } from './confirm.tsx';
import { type Conflict, ConflictList } from './conflict-list.tsx';
import { Form } from './form.tsx';
import { type FormFault, FormFaults } from './form-faults.tsx';

export interface FragmentPageProps {
  readonly action: string;
  readonly csrf: string;
  readonly submissionId?: string;
  readonly version?: number;
  readonly summary: readonly FormFault[];
  readonly conflicts: readonly Conflict[] | null;
  readonly wordOf: (field: string) => string;
  readonly save: string;
  readonly leaveHref: string;
  readonly removal: { readonly action: string; readonly what: string; readonly question: string } | null;
  readonly children: ComponentChildren;
}

/** A part of the design as a form: what is wrong at its head, what somebody else changed, its entries, and its removal. */
export function FragmentPage(props: FragmentPageProps): JSX.Element {
  const { action, csrf, submissionId, version, conflicts, removal } = props;
  return (
    <>
      <FormFaults faults={props.summary} />
      {conflicts !== null && <ConflictList conflicts={conflicts} theirsHref={action} wordOf={props.wordOf} />}
      <Form
        action={action}
        csrf={csrf}
        {...(submissionId === undefined ? {} : { submissionId })}
        {...(version === undefined ? {} : { version })}
      >
        {props.children}
        <div class="row">
          <Button kind="lead">{conflicts === null ? props.save : 'Keep mine: save over theirs'}</Button>
          <ButtonLink href={props.leaveHref} kind="plain">
            Leave it
          </ButtonLink>
        </div>
      </Form>
      {removal !== null && version !== undefined && (
        <Confirm
          ask={`Remove ${removal.what}`}
          question={removal.question}
          answer={`Remove ${removal.what}`}
          action={removal.action}
          csrf={csrf}
          version={version}
        />
      )}
    </>
  );
}
