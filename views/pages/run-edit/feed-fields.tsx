import type { JSX } from 'preact';
import { SelectField, TextField, TickField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { runEntryWord } from '../../words/run-entries.ts';
import { entryProps, type Filled } from './fields.ts';

/** How the run is fed, and from what. */
export function FeedFields(props: Filled): JSX.Element {
  const entry = (path: string) => entryProps(props, path);
  const { label: _label, value, ...hundred } = entry('feed.deviceHundredPercent');
  return (
    <Part title="Feed" id="feed">
      <div class="fields">
        <SelectField
          {...entry('feed.kind')}
          options={[
            { value: 'end', word: 'end feed' },
            { value: 'centre', word: 'centre feed' },
            { value: 'tee', word: 'tee from another run' },
          ]}
        />
        <TextField {...entry('feed.supply')} hint="Board or unit that feeds the run." />
        <TextField {...entry('feed.fromRun')} hint="Of a tee: the run that it stands in." />
        <TextField {...entry('feed.atMm')} kind="length" hint="Along that run, or along this one for a centre feed." />
        <SelectField
          {...entry('feed.branchSide')}
          hint="Of a tee, looking along the parent run."
          options={[
            { value: '', word: 'no tee' },
            { value: 'left', word: 'left' },
            { value: 'right', word: 'right' },
          ]}
        />
        <TextField {...entry('feed.terminations')} kind="number" />
        <TextField {...entry('feed.deviceA')} kind="number" unit="A" />
        <TickField
          {...hundred}
          label={runEntryWord('feed.deviceHundredPercent')}
          ticked={value === 'yes' ? 'yes' : 'no'}
        />
        <TextField {...entry('feed.faultKA')} kind="number" unit="kA" hint="Three-phase symmetrical." />
        <TextField {...entry('feed.xOverR')} kind="number" />
      </div>
      <details
        open={Object.entries(props.entered).some(([name, text]) => name.startsWith('feed.cable.') && text !== '')}
      >
        <summary>Feeder cable</summary>
        <div class="fields">
          <TextField {...entry('feed.cable.lengthM')} kind="number" unit="m" />
          <TextField {...entry('feed.cable.ohmPerKm.r')} kind="number" unit="Ω/km" />
          <TextField {...entry('feed.cable.ohmPerKm.x')} kind="number" unit="Ω/km" />
          <TextField {...entry('feed.cable.parallel')} kind="number" hint="1 when empty." />
          <TextField {...entry('feed.cable.neutralOhmPerKm.r')} kind="number" unit="Ω/km" />
          <TextField {...entry('feed.cable.neutralOhmPerKm.x')} kind="number" unit="Ω/km" />
        </div>
      </details>
    </Part>
  );
}
