import type { JSX } from 'preact';
import { Button } from '../../../components/button.tsx';
import { TextArea, TickField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { Mark } from '../../../components/mark.tsx';
import { Time } from '../../../components/time.tsx';
import { entriesOf } from '../entries.ts';
import type { JointPageProps } from '../joint.tsx';
import { NextUp } from '../next-up.tsx';
import { ByOthers } from './next-step.tsx';

/** Once every step is done: acceptance by a person who did none of them. */
export function Acceptance(props: JointPageProps & { readonly href: string }): JSX.Element {
  const { card, viewer, say, after } = props;
  if (card.accepted !== null)
    return (
      <div class="stack">
        <p class="row large">
          <Mark state="accepted" />
          <span>
            by {card.accepted.by.name}, <Time at={new Date(card.accepted.at)} zone={say.zone} />
          </span>
        </p>
        {after !== null && <NextUp what={`joint ${after.mark}`} href={after.href} go={`Card of ${after.mark}`} />}
      </div>
    );
  return (
    <section class="next-up" aria-label="Acceptance" id="next">
      <h2>Accept the joint</h2>
      {card.installers.some(({ id }) => id === viewer.id) ? (
        <ByOthers {...props} />
      ) : viewer.mayAccept ? (
        <AcceptanceForm {...props} />
      ) : (
        <p class="waits">All steps are done. A foreman, an inspector or the office accepts the joint.</p>
      )}
    </section>
  );
}

function AcceptanceForm({
  href,
  csrf,
  joint,
  card,
  trouble,
  freshId,
  run,
}: JointPageProps & { readonly href: string }) {
  const entries = entriesOf(trouble, 'accept', freshId);
  const differs = card.remarks.some(({ code }) => code === 'torque.differs');
  return (
    <Form
      action={href}
      csrf={csrf}
      submissionId={entries.submissionId}
      version={joint.version}
      keep={{ label: `${run.mark} ${joint.mark}, acceptance` }}
    >
      <input type="hidden" name="do" value="accept" />
      <p>You looked at the joint, and did none of its steps.</p>
      {differs && (
        <TickField {...entries.tick('differencesRead')} label="I have read how the torques differ from the sheet" />
      )}
      <details open={entries.text('note').value !== ''}>
        <summary>Write a note</summary>
        <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
      </details>
      <Button kind="lead">Accept joint {joint.mark}</Button>
    </Form>
  );
}
