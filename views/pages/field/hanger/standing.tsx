import { Button } from '../../../components/button.tsx';
import { Form } from '../../../components/form.tsx';
import { Time } from '../../../components/time.tsx';
import { entriesOf } from '../entries.ts';
import type { HangerPageProps } from '../hanger.tsx';

export function Standing(props: HangerPageProps & { readonly href: string }) {
  const { card, say, hanger, viewer, isOwnWork, href, csrf, trouble, freshId } = props;
  const entries = entriesOf(trouble, 'accept', freshId);
  return (
    <>
      {card.set !== null && (
        <p>
          Set by {card.set.by.name}, <Time at={new Date(card.set.at)} zone={say.zone} />.
        </p>
      )}
      {card.accepted !== null ? (
        <p>
          Accepted by {card.accepted.by.name}, <Time at={new Date(card.accepted.at)} zone={say.zone} />.
        </p>
      ) : isOwnWork || !viewer.mayAccept ? (
        <p class="waits">
          {isOwnWork
            ? 'You set it, so another person accepts it.'
            : 'A foreman, an inspector or the office accepts it.'}
        </p>
      ) : (
        <Form
          action={href}
          csrf={csrf}
          submissionId={entries.submissionId}
          version={hanger.version}
          keep={{ label: `${props.run.mark} ${hanger.mark}, acceptance` }}
        >
          <input type="hidden" name="do" value="accept" />
          <Button kind="lead">Accept {hanger.mark}</Button>
        </Form>
      )}
    </>
  );
}
