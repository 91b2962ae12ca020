import type { JSX } from 'preact';
import { SelectField, TextField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { entryProps } from './fields.ts';
import { RowsOf, type RowsOfProps } from './rows-of.tsx';

const NOT_STATED = { value: '', word: 'not stated' };

/** What holds the run up. */
export function HangingFields(props: Omit<RowsOfProps, 'group'>): JSX.Element {
  const entry = (path: string) => entryProps(props, path);
  return (
    <Part title="Hangers" id="hanging">
      <div class="fields">
        <SelectField
          {...entry('structure.kind')}
          options={[
            { value: '', word: 'anywhere (not stated)' },
            { value: 'continuous', word: 'anywhere' },
            { value: 'grid', word: 'on lines only' },
          ]}
        />
        <TextField {...entry('structure.pitchMm')} kind="length" hint="Of lines only." />
        <TextField {...entry('structure.offsetMm')} kind="length" />
        <SelectField
          {...entry('attachment')}
          options={[
            NOT_STATED,
            { value: 'anchor', word: 'anchor' },
            { value: 'beam-clamp', word: 'beam clamp' },
            { value: 'trapeze', word: 'trapeze' },
            { value: 'strut', word: 'strut' },
          ]}
        />
        <SelectField
          {...entry('rod')}
          options={[
            NOT_STATED,
            ...['3/8', '1/2', '5/8', 'M10', 'M12', 'M16'].map((rod) => ({ value: rod, word: rod })),
          ]}
        />
        <TextField {...entry('dropMm')} kind="length" hint="Structure to busway, with what is screwed in." />
        <TextField {...entry('rodStockMm')} kind="length" hint="3048 mm (10 ft) when empty." />
        <TextField
          {...entry('supportCapacityKg')}
          kind="quantity"
          hint="The evaluated value for this structure, as 150 kg or 330 lb. Empty is unknown, which is never in order."
        />
      </div>
      <RowsOf {...props} group="noSupport" />
    </Part>
  );
}
