import type { JSX } from 'preact';
import type { TorqueUnit } from '../../../../src/domain/quality/record.ts';
import { ChoiceField, TextField } from '../../../components/field.tsx';
import { torque } from '../../../words/quality/figures.ts';
import type { Entries } from '../entries.ts';

/** The torque tool that this person wrote down last. */
export interface LastTool {
  readonly toolId: string;
  readonly calibrationDue: string;
  readonly unit: TorqueUnit;
}

export interface TorqueFieldsProps {
  readonly entries: Entries;
  /** null: the sheet states none. */
  readonly statedNm: number | null;
  readonly lastTool: LastTool | null;
  readonly usualUnit: TorqueUnit;
}

const UNITS: readonly { readonly value: TorqueUnit; readonly word: string }[] = [
  { value: 'Nm', word: 'N·m' },
  { value: 'lbf-ft', word: 'lbf·ft' },
];

/** What was applied, in the unit of the wrench, and the wrench itself with the last day of its calibration. */
export function TorqueFields({ entries, statedNm, lastTool, usualUnit }: TorqueFieldsProps): JSX.Element {
  return (
    <>
      <p class="stated">
        {statedNm === null ? (
          'The sheet states no torque. It is recorded and cannot be judged until the office enters it.'
        ) : (
          <>
            The sheet: <strong>{torque(statedNm)}</strong>
          </>
        )}
      </p>
      <TextField {...entries.text('value')} label="Torque applied" kind="number" need="required" />
      <ChoiceField
        {...entries.text('unit', lastTool?.unit ?? usualUnit)}
        label="Unit of the wrench"
        options={UNITS}
        need="required"
      />
      <TextField
        {...entries.text('toolId', lastTool?.toolId)}
        label="Torque tool"
        hint={lastTool === null ? 'The number on the tool' : 'As you wrote it down last; look at the tool'}
        need="required"
      />
      <TextField
        {...entries.text('calibrationDue', lastTool?.calibrationDue)}
        label="Last day of its calibration"
        kind="date"
        need="required"
      />
    </>
  );
}
