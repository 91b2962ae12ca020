import type { JSX } from 'preact';
import type { Tap } from '../../../../src/domain/model.ts';
import { isHung } from '../../../../src/domain/quality/states.ts';
import { Button } from '../../../components/button.tsx';
import { ChoiceField, TextArea, TextField, TickField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { type Entries, entriesOf } from '../entries.ts';
import { FaultText } from '../fault-text.tsx';
import type { TapOffPageProps } from '../tap-off.tsx';

const PHASES: readonly Tap['phases'][] = ['L1', 'L2', 'L3', 'L1-L2', 'L2-L3', 'L3-L1', 'L1-L2-L3'];

/** Common order; a tap-off's own sheet may have others, which are written below and offered the next time. */
export const USUAL_STEPS = [
  'Retaining piece in place',
  'Head in the slot',
  'Box seated flush before it is engaged',
  'Box secured',
] as const;

type SettingProps = TapOffPageProps & { readonly href: string };

/** Brings the tap-off on site and sets it: every confirmation is a tick of its own, none is made for the person. */
export function Setting(props: SettingProps): JSX.Element {
  const { tap, piece, viewer } = props;
  if (!viewer.mayInstall) return <p class="waits">You can read this card. An installer or a foreman records on it.</p>;
  return (
    <>
      {isHung(piece.state) ? (
        <SettingForm {...props} />
      ) : (
        <p class="waits">
          Waits for {piece.mark} ({piece.state}): hang and record it first, then the tap-off.
        </p>
      )}
      {tap.state === 'planned' && <OnSite {...props} />}
    </>
  );
}

function SettingForm(props: SettingProps) {
  const { tap, href, csrf, trouble, freshId, proved } = props;
  const entries = entriesOf(trouble, 'set', freshId);
  return (
    <section class="next-up" aria-label="Set it" id="next">
      <h2>Set {tap.id}</h2>
      <Form
        action={href}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={tap.version}
        keep={{ label: `${props.run.mark} ${tap.id}, set` }}
      >
        <input type="hidden" name="do" value="set" />
        <h3>Isolation</h3>
        <TickField {...entries.tick('runIsolated')} label="The run is isolated" />
        <TickField
          {...entries.tick('absenceProved')}
          label="Absence of voltage proved, tester proved before and after"
        />
        <TextField {...entries.text('provedBy', proved.by)} label="Proved by" need="required" />
        <TextField
          {...entries.text('provedAt', proved.atLocal)}
          label="Proved when"
          kind="datetime-local"
          need="required"
          {...(proved.isRemembered
            ? { hint: 'As you wrote it down last on this run; prove again after any break.' }
            : {})}
        />
        <h3>The box</h3>
        <TickField {...entries.tick('deviceOff')} label="Its device is off" />
        <TickField {...entries.tick('deviceLocked')} label="Its device is locked" />
        <ChoiceField
          {...entries.text('phases')}
          label="Phases on the box in your hand"
          options={PHASES.map((phases) => ({ value: phases, word: phases }))}
          need="required"
        />
        <Steps {...props} entries={entries} />
        <details open={entries.text('note').value !== ''}>
          <summary>Write a note</summary>
          <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
        </details>
        <Button kind="lead">{tap.id} is set</Button>
      </Form>
    </section>
  );
}

function Steps({ knownSteps, entries }: SettingProps & { readonly entries: Entries }) {
  const steps = knownSteps.length > 0 ? knownSteps : USUAL_STEPS;
  const fault = entries.fault('steps');
  return (
    <fieldset class="fillin" aria-describedby={fault === undefined ? 'steps-hint' : 'steps-hint steps-fault'}>
      <legend>Steps of its own sheet, as done</legend>
      <div class="hint" id="steps-hint">
        {knownSteps.length > 0
          ? 'As they were last written down in this job.'
          : 'The usual ones. The maker’s sheet of this tap-off decides; write its own below.'}
      </div>
      {fault !== undefined && <FaultText id="steps-fault">{fault}</FaultText>}
      <div>
        {steps.map((step) => (
          <label class="tick" key={step}>
            <input type="checkbox" name="steps" value={step} checked={entries.has('steps', step)} />
            <span>{step}</span>
          </label>
        ))}
      </div>
      <TextArea {...entries.text('moreSteps')} label="Other steps of its sheet, one a line" need="optional" rows={2} />
    </fieldset>
  );
}

function OnSite({ tap, href, csrf, trouble, freshId, run }: SettingProps) {
  const entries = entriesOf(trouble, 'on-site', freshId);
  return (
    <details open={trouble?.form === 'on-site'}>
      <summary>{tap.id} came on site</summary>
      <Form
        action={href}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={tap.version}
        keep={{ label: `${run.mark} ${tap.id}, on site` }}
      >
        <input type="hidden" name="do" value="on-site" />
        <TextField {...entries.text('lot')} label="Lot or carton" need="optional" />
        <Button>{tap.id} is on site</Button>
      </Form>
    </details>
  );
}
