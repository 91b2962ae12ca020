import type { JSX } from 'preact';
import type { Stamp } from '../../../../src/domain/quality/record.ts';
import { Button } from '../../../components/button.tsx';
import { TextArea, TextField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { Mark } from '../../../components/mark.tsx';
import { Time } from '../../../components/time.tsx';
import { type Entries, entriesOf } from '../entries.ts';
import type { PiecePageProps } from '../piece.tsx';

type QuarantineProps = PiecePageProps & { readonly action: string };

/** Holds a piece that is damaged, wet or of the wrong hand; two people in two roles let it go again. */
export function Quarantine(props: QuarantineProps): JSX.Element | null {
  const { card, viewer } = props;
  if (card.quarantine !== null) return <Held {...props} quarantine={card.quarantine} />;
  if (!viewer.mayInstall && !viewer.mayAccept) return null;
  const { piece, trouble, freshId } = props;
  const entries = entriesOf(trouble, 'quarantine', freshId);
  return (
    <details class="ask" open={trouble?.form === 'quarantine'} id="quarantine">
      <summary class="button stops">Put {piece.mark} in quarantine</summary>
      <PieceForm {...props} does="quarantine" entries={entries} label="in quarantine">
        <p>It is left out of all work until the office and an inspector let it go, each under their own login.</p>
        <TextArea {...entries.text('reason')} label="What is wrong with it" need="required" rows={3} />
        <Button kind="stops">Put in quarantine</Button>
      </PieceForm>
    </details>
  );
}

function Held(props: QuarantineProps & { readonly quarantine: NonNullable<PiecePageProps['card']['quarantine']> }) {
  const { quarantine, say, viewer, trouble, freshId } = props;
  const role = viewer.role === 'office' || viewer.role === 'inspector' ? viewer.role : null;
  const mayAdd = role !== null && quarantine[role] === null;
  const entries = entriesOf(trouble, 'release', freshId);
  return (
    <section class="next-up" aria-label="Quarantine">
      <h2>
        <Mark state="quarantined" word="In quarantine" />
      </h2>
      <p>
        <strong>“{quarantine.reason}”</strong> {quarantine.by.name},{' '}
        <Time at={new Date(quarantine.at)} zone={say.zone} />
      </p>
      <p>Leave it out of the work. Two signatures let it go:</p>
      <ul class="plain">
        <Signature as="office" stamp={quarantine.office} zone={say.zone} />
        <Signature as="inspector" stamp={quarantine.inspector} zone={say.zone} />
      </ul>
      {mayAdd && (
        <PieceForm {...props} does="release" entries={entries} label="signature">
          <input type="hidden" name="as" value={role} />
          <TextArea {...entries.text('reason')} label="Why it may be used" need="required" rows={3} />
          <TextField {...entries.text('decision')} label="Written decision: document and date" need="optional" />
          <Button kind="lead">Sign as {role}</Button>
        </PieceForm>
      )}
    </section>
  );
}

function Signature({ as, stamp, zone }: { as: string; stamp: Stamp | null; zone: string | null }) {
  return (
    <li>
      {as}:{' '}
      {stamp === null ? (
        <strong>still open</strong>
      ) : (
        <>
          {stamp.by.name}, <Time at={new Date(stamp.at)} zone={zone} />
        </>
      )}
    </li>
  );
}

function PieceForm(
  props: QuarantineProps & {
    readonly does: string;
    readonly entries: Entries;
    readonly label: string;
    readonly children: JSX.Element | readonly (JSX.Element | false)[];
  },
) {
  const { action, csrf, piece, run, does, entries, label, children } = props;
  return (
    <Form
      action={action}
      csrf={csrf}
      submissionId={entries.submissionId}
      version={piece.version}
      keep={{ label: `${run.mark} ${piece.mark}, ${label}` }}
    >
      <input type="hidden" name="do" value={does} />
      {children}
    </Form>
  );
}
