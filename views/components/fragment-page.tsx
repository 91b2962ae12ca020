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
  /** What the form was made from, sent along so that it can be merged with what somebody else saves meanwhile. */
  readonly base?: string;
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
  const { action, csrf, submissionId, version, base, conflicts, removal } = props;
  return (
    <>
      <FormFaults faults={props.summary} />
      {conflicts !== null && (
        <ConflictList conflicts={conflicts} theirsHref={action} wordOf={props.wordOf} merged={base !== undefined} />
      )}
      <Form
        action={action}
        csrf={csrf}
        {...(submissionId === undefined ? {} : { submissionId })}
        {...(version === undefined ? {} : { version })}
      >
        {base !== undefined && <input type="hidden" name="base" value={base} />}
        {props.children}
        <div class="row">
          <Button kind="lead">{saveWord(props)}</Button>
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

function saveWord({ conflicts, base, save }: FragmentPageProps): string {
  if (conflicts === null) return save;
  if (base === undefined) return 'Keep mine: save over theirs';
  return conflicts.length === 0 ? 'Save both' : 'Keep mine where both changed';
}
