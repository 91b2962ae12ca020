import { formatLength, writeLength } from '../../../../src/domain/units/format-length.ts';
import { Button } from '../../../components/button.tsx';
import { TextArea, TextField, TickField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { entriesOf } from '../entries.ts';
import type { HangerPageProps } from '../hanger.tsx';
import { PlaceSaid } from './place-said.tsx';

export function Setting(props: HangerPageProps & { readonly href: string }) {
  const { hanger, href, csrf, trouble, freshId, viewer, correcting, asked, card, say } = props;
  if (!viewer.mayInstall) return <p class="waits">You can read this card. An installer or a foreman records on it.</p>;
  const entries = entriesOf(trouble, 'set', freshId);
  const action = correcting === null ? href : `${href}?correct=${correcting.id}`;
  const before = card.measured === null ? '' : writeLength(card.measured, say.units);
  return (
    <section class="next-up" aria-label="Set it" id="next">
      <h2>{correcting === null ? `Set ${hanger.mark}` : `Replace the record of ${hanger.mark}`}</h2>
      <Form
        action={action}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={hanger.version}
        keep={{ label: `${props.run.mark} ${hanger.mark}, set` }}
      >
        <input type="hidden" name="do" value="set" />
        {correcting !== null && <input type="hidden" name="supersedes" value={correcting.id} />}
        <MeasuredField {...props} value={entries.text('measured', before).value} fault={entries.fault('measured')} />
        <div id="place-said" aria-live="polite">
          {asked !== null && <PlaceSaid asked={asked} say={say} />}
        </div>
        <TickField {...entries.tick('rodPlumb')} label="Rod plumb" />
        <TickField {...entries.tick('loadNut')} label="Load nut set" />
        <TickField {...entries.tick('lockNut')} label="Lock nut set" />
        {correcting !== null && (
          <TextField {...entries.text('cause')} label="Why the first record is replaced" need="required" />
        )}
        <details open={entries.text('note').value !== ''}>
          <summary>Write a note</summary>
          <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
        </details>
        <Button kind="lead">{correcting === null ? `${hanger.mark} is set` : 'Replace the record'}</Button>
      </Form>
      {correcting !== null && <a href={href}>Leave it as it is</a>}
    </section>
  );
}

/** Asks the rules as it is typed; without script the record itself is refused with the same words. */
function MeasuredField(
  props: HangerPageProps & { readonly href: string; readonly value: string; readonly fault: string | undefined },
) {
  const { hanger, say, href, value, fault } = props;
  return (
    <div hx-get={`${href}/place`} hx-trigger="input delay:400ms" hx-target="#place-said" hx-include="#set-measured">
      <TextField
        name="measured"
        id="set-measured"
        kind="length"
        label="Measured from the feed"
        hint={`Leave empty when it stands at ${formatLength(hanger.planned, say.units)}, as planned.`}
        value={value}
        {...(fault === undefined ? {} : { fault })}
      />
    </div>
  );
}
