import type { JSX } from 'preact';
import { type Option, SelectField, TextField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { entryProps, type Filled } from './fields.ts';

export interface PlaceFieldsProps extends Filled {
  readonly levels: readonly Option[];
  readonly types: readonly Option[];
  readonly released: boolean;
  readonly example: string;
}

/** Which run it is, where it begins and which way it goes. */
export function PlaceFields(props: PlaceFieldsProps): JSX.Element {
  const { levels, types, released, example } = props;
  const entry = (path: string) => entryProps(props, path);
  return (
    <Part title="Run" id="place">
      <div class="fields">
        <TextField
          {...entry('id')}
          need="required"
          hint={released ? 'Fixed: the floor carries this label.' : 'As it will be painted, as F1-R1-A.'}
        />
        <SelectField {...entry('level')} options={levels} />
        <SelectField {...entry('type')} options={types} />
        <TextField {...entry('area')} />
        <SelectField
          {...entry('side')}
          options={[
            { value: '', word: 'none' },
            { value: 'A', word: 'A-side' },
            { value: 'B', word: 'B-side' },
          ]}
        />
        <TextField {...entry('pairedRun')} hint="The run of the other side." />
        <SelectField
          {...entry('conductorSide')}
          hint="Looking away from the feed, slot down. Tap-offs face this side."
          options={[
            { value: 'left', word: 'left' },
            { value: 'right', word: 'right' },
          ]}
        />
        <TextField
          {...entry('headingDeg')}
          kind="number"
          unit="°"
          hint="0 is east, 90 is north, 180 west, 270 south."
        />
        <TextField {...entry('start.xMm')} kind="length" hint={`Of the first piece’s face, like ${example}.`} />
        <TextField {...entry('start.yMm')} kind="length" />
        <TextField {...entry('start.zMm')} kind="length" />
      </div>
    </Part>
  );
}
