import type { JSX } from 'preact';
import type { CardStep, JointCard } from '../../../../src/domain/quality/joint-card.ts';
import type { StepKind } from '../../../../src/domain/quality/joint-sheet.ts';
import { Button } from '../../../components/button.tsx';
import { TextArea, TextField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import type { Entries } from '../entries.ts';
import { PoleTicks } from './pole-ticks.tsx';
import { type LastTool, TorqueFields } from './torque-fields.tsx';

export interface StepFormProps {
  readonly action: string;
  readonly csrf: string;
  readonly version: number;
  readonly mark: string;
  readonly run: { readonly mark: string };
  readonly card: Pick<JointCard, 'sheet' | 'steps'>;
  readonly step: CardStep;
  readonly entries: Entries;
  readonly lastTool: LastTool | null;
  readonly usualUnit: LastTool['unit'];
  /** The record that this one replaces. */
  readonly corrects?: { readonly id: string };
}

const DONE: Readonly<Record<StepKind, string>> = {
  work: 'Done',
  hold: 'Seen: every pole seated',
  torque: 'Record the torque',
  check: 'Checked',
};

/** Records one step of the sheet, with what that step asks. */
export function StepForm(props: StepFormProps): JSX.Element {
  const { action, csrf, version, mark, run, card, step, entries, corrects } = props;
  return (
    <Form
      action={action}
      csrf={csrf}
      submissionId={entries.submissionId}
      version={version}
      keep={{ label: `${run.mark} ${mark}, step ${step.index + 1}` }}
    >
      <input type="hidden" name="do" value="step" />
      <input type="hidden" name="step" value={step.index} />
      <input type="hidden" name="words" value={step.text} />
      {corrects !== undefined && <input type="hidden" name="supersedes" value={corrects.id} />}
      {step.kind === 'hold' && <PoleTicks poles={card.sheet.poles} entries={entries} />}
      {step.kind === 'torque' && <TorqueFields {...props} statedNm={card.sheet.torqueNm} />}
      {corrects !== undefined && (
        <TextField {...entries.text('cause')} label="Why the first record is replaced" need="required" />
      )}
      <details open={isFilled(entries)}>
        <summary>Write down lots or a note</summary>
        <div class="stack">
          <TextField {...entries.text('contactSetLot')} label="Lot of the contact set" need="optional" />
          <TextField {...entries.text('clampLot')} label="Lot of the clamps" need="optional" />
          <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
        </div>
      </details>
      <Button kind="lead">
        {corrects === undefined ? DONE[step.kind] : `Replace the record of step ${step.index + 1}`}
      </Button>
    </Form>
  );
}

function isFilled(entries: Entries): boolean {
  return ['contactSetLot', 'clampLot', 'note'].some((name) => entries.text(name).value !== '');
}
