import type { JSX } from 'preact';
import { formatLength } from '../../../../src/domain/units/format-length.ts';
import { Button } from '../../../components/button.tsx';
import { TextArea, TextField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { Time } from '../../../components/time.tsx';
import { entriesOf } from '../entries.ts';
import type { TapOffPageProps } from '../tap-off.tsx';

type CheckingProps = TapOffPageProps & { readonly href: string };

/** After a tap-off is set: the first support of its drop, then the check by another person. */
export function Checking(props: CheckingProps): JSX.Element {
  const { card, tap, viewer, isOwnWork } = props;
  const dropOpen = tap.drop !== null && card.dropSupported === null;
  return (
    <>
      <DropSupport {...props} />
      {card.checked === null &&
        (isOwnWork || !viewer.mayAccept ? (
          <p class="waits">
            {isOwnWork
              ? 'You set it, so another person checks it, under their own login.'
              : 'A foreman, an inspector or the office checks it.'}
          </p>
        ) : (
          !dropOpen && <CheckForm {...props} />
        ))}
    </>
  );
}

function DropSupport(props: CheckingProps) {
  const { card, tap, say, href, csrf, trouble, freshId, dropLimit, viewer } = props;
  if (card.dropSupported !== null)
    return (
      <p>
        Drop supported {formatLength(card.dropSupported.distance, say.units)} from the tap-off by{' '}
        {card.dropSupported.by.name}, <Time at={new Date(card.dropSupported.at)} zone={say.zone} />.
      </p>
    );
  if (tap.drop === null) return null;
  if (!viewer.mayInstall) return <p class="waits">Its drop is supported and recorded first.</p>;
  const entries = entriesOf(trouble, 'drop', freshId);
  return (
    <section class="next-up" aria-label="Support its drop" id="next">
      <h2>Support the drop of {tap.id}</h2>
      <Form
        action={href}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={tap.version}
        keep={{ label: `${props.run.mark} ${tap.id}, drop supported` }}
      >
        <input type="hidden" name="do" value="drop" />
        <TextField
          {...entries.text('distance')}
          kind="length"
          label="From the tap-off to the first support, along the cord"
          hint={
            dropLimit === null
              ? 'The code basis of this job prints no distance; the maker’s sheet and the local code decide.'
              : `At most ${formatLength(dropLimit.limit, say.units)} by ${dropLimit.source}; the local code decides.`
          }
          need="required"
        />
        <Button kind="lead">The drop is supported</Button>
      </Form>
    </section>
  );
}

function CheckForm({ href, csrf, tap, trouble, freshId, run }: CheckingProps) {
  const entries = entriesOf(trouble, 'check', freshId);
  return (
    <section class="next-up" aria-label="Check it" id="next">
      <h2>Check {tap.id}</h2>
      <Form
        action={href}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={tap.version}
        keep={{ label: `${run.mark} ${tap.id}, check` }}
      >
        <input type="hidden" name="do" value="check" />
        <p>You looked at it: type, phases, seated flush, secured, device off and locked, drop supported, label on.</p>
        <details open={entries.text('note').value !== ''}>
          <summary>Write a note</summary>
          <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
        </details>
        <Button kind="lead">{tap.id} is checked</Button>
      </Form>
    </section>
  );
}
