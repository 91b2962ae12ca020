import type { JSX } from 'preact';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField, TickField } from '../../components/field.tsx';
import { FragmentPage, type FragmentPageProps } from '../../components/fragment-page.tsx';
import { levelEntryWord } from '../../words/level-entries.ts';

export interface LevelPageProps extends Omit<FragmentPageProps, 'children' | 'wordOf' | 'save'> {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly example: string;
}

/** A level and the conditions of work on it. */
export function LevelPage({ entered, faultOf, example, ...form }: LevelPageProps): JSX.Element {
  const entry = (path: string) => ({
    name: path,
    label: levelEntryWord(path),
    value: entered[path] ?? '',
    ...faultProps(faultOf, path),
  });
  const { value: live, ...liveEntry } = entry('conditions.liveArea');
  return (
    <FragmentPage {...form} wordOf={levelEntryWord} save="Save the level">
      <div class="fields">
        <TextField {...entry('id')} need="required" hint="As F1." />
        <TextField {...entry('name')} need="required" hint="As Floor 1." />
        <TextField {...entry('order')} kind="number" need="required" hint="A whole number; no two levels share one." />
        <TextField {...entry('elevationMm')} kind="length" hint={`Like ${example}.`} />
        <TextField {...entry('structureHeightMm')} kind="length" />
        <TextField
          {...entry('conditions.mountingHeightMm')}
          kind="length"
          hint="The height factor of the hours reads it."
        />
        <SelectField
          {...entry('conditions.congestion')}
          options={[
            { value: '', word: 'open (not stated)' },
            { value: 'open', word: 'open' },
            { value: 'normal', word: 'normal' },
            { value: 'tight', word: 'tight' },
          ]}
        />
        <TextField {...entry('conditions.storeysAboveGrade')} kind="number" hint="0 at grade." />
        <TickField {...liveEntry} ticked={live === 'yes' ? 'yes' : 'no'} />
      </div>
    </FragmentPage>
  );
}
