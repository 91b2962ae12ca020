import type { JSX } from 'preact';
import { type Entered, type FaultOf, faultProps } from './fault-of.ts';
import { ChoiceField, TextField, TickField } from './field.tsx';

export interface ProjectFieldsProps {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
}

/** The heading of a job: who and where, the units, the code basis and the nominal voltages. */
export function ProjectFields({ entered, faultOf }: ProjectFieldsProps): JSX.Element {
  const text = (name: string) => ({ name, value: entered[name] ?? '', ...faultProps(faultOf, name) });
  return (
    <div class="fields">
      <TextField {...text('number')} label="Job number" need="required" />
      <TextField {...text('name')} label="What the job is called" need="required" />
      <TextField {...text('client')} label="Client" need="optional" />
      <TextField {...text('site')} label="Site" need="optional" />
      <ChoiceField
        {...text('units')}
        label="Lengths are shown in"
        need="required"
        hint="A bare number is read as feet or as millimetres accordingly; a figure with its unit is read as it says."
        options={[
          { value: 'ft-in', word: 'feet and inches' },
          { value: 'metric', word: 'metres' },
        ]}
      />
      <TextField {...text('currency')} label="Currency" need="required" hint="Three letters, as USD or GBP." />
      <TextField
        {...text('timeZone')}
        label="Time zone of the site"
        need="optional"
        hint="As America/Chicago. Times are shown in UTC without it."
      />
      <ChoiceField
        {...text('codeBasis')}
        label="Code basis"
        need="required"
        hint="Which family of rules the checks quote. The adopted local code decides."
        options={[
          { value: 'NEC', word: 'NEC' },
          { value: 'IEC', word: 'IEC' },
        ]}
      />
      <TextField {...text('codeEdition')} label="Edition in force at the site" need="optional" hint="As 2023." />
      <TickField
        name="industrial"
        label="An industrial establishment, in the sense of the reduced-busway exception"
        ticked={entered.industrial === 'yes' ? 'yes' : 'no'}
        {...faultProps(faultOf, 'industrial')}
      />
      <TextField {...text('frequencyHz')} label="Frequency" kind="number" unit="Hz" need="required" />
      <TextField {...text('voltageLL')} label="Voltage line to line" kind="number" unit="V" need="required" />
      <TextField {...text('voltageLN')} label="Voltage line to neutral" kind="number" unit="V" need="required" />
      <TextField
        {...text('voltageDropLimitPercent')}
        label="The job’s own limit of voltage drop"
        kind="number"
        unit="%"
        need="optional"
        hint="3 when empty."
      />
      <TextField
        {...text('unbalanceLimitPercent')}
        label="The job’s own limit of unbalance at the feed"
        kind="number"
        unit="%"
        need="optional"
        hint="10 when empty."
      />
    </div>
  );
}
