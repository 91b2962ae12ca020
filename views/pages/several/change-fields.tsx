import type { JSX } from 'preact';
import type { BulkField } from '../../../src/document/several/bulk-schema.ts';
import { faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { BULK_WORDS } from '../../words/bulk-fields.ts';
import type { ChangesPageProps } from './changes.tsx';

const AS_IT_IS = { value: '', word: 'as it is' };
const NONE = { value: 'none', word: 'not stated' };
const plain = (values: readonly string[]) => values.map((value) => ({ value, word: value }));

/** What may be changed of all; an empty field leaves what stands, "none" takes it away. */
export function ChangeFields({
  entered,
  faultOf,
  levels,
  types,
  example,
}: Pick<ChangesPageProps, 'entered' | 'faultOf' | 'levels' | 'types' | 'example'>): JSX.Element {
  const named = (name: string, label: string) => ({
    name,
    label,
    value: entered[name] ?? '',
    ...faultProps(faultOf, name),
  });
  const entry = (field: BulkField) => named(field, BULK_WORDS[field]);
  return (
    <>
      <p class="hint">An empty field leaves what stands in each run; the word none takes it away.</p>
      <Part title="Place" id="place">
        <div class="fields">
          <SelectField {...entry('level')} options={[AS_IT_IS, ...levels]} hint="Names stay." />
          <SelectField {...entry('type')} options={[AS_IT_IS, ...types]} />
          <TextField {...entry('area')} />
          <SelectField
            {...entry('side')}
            options={[AS_IT_IS, NONE, { value: 'A', word: 'A-side' }, { value: 'B', word: 'B-side' }]}
          />
          <SelectField {...entry('conductorSide')} options={[AS_IT_IS, ...plain(['left', 'right'])]} />
          <TextField {...entry('elevationMm')} kind="length" hint={`Like ${example}.`} />
        </div>
      </Part>
      <Part title="Feed and end" id="feed">
        <div class="fields">
          <TextField {...entry('supply')} />
          <TextField {...entry('deviceA')} kind="number" unit="A" />
          <TextField {...entry('faultKA')} kind="number" unit="kA" />
          <TextField {...entry('xOverR')} kind="number" />
          <TextField {...entry('terminations')} kind="number" />
          <SelectField
            {...entry('end')}
            options={[
              AS_IT_IS,
              { value: 'exact', word: 'exactly as drawn' },
              { value: 'range', word: 'within the two below' },
            ]}
          />
          <TextField {...named('shortMm', 'It may end short by')} kind="length" />
          <TextField {...named('longMm', 'It may end long by')} kind="length" />
        </div>
      </Part>
      <Part title="Hangers" id="hanging">
        <div class="fields">
          <SelectField
            {...entry('structure')}
            options={[AS_IT_IS, { value: 'continuous', word: 'anywhere' }, { value: 'grid', word: 'on lines only' }]}
          />
          <TextField {...named('pitchMm', 'Distance between its lines')} kind="length" />
          <TextField {...named('offsetMm', 'First line at')} kind="length" />
          <SelectField
            {...entry('attachment')}
            options={[
              AS_IT_IS,
              NONE,
              { value: 'anchor', word: 'anchor' },
              { value: 'beam-clamp', word: 'beam clamp' },
              { value: 'trapeze', word: 'trapeze' },
              { value: 'strut', word: 'strut' },
            ]}
          />
          <SelectField
            {...entry('rod')}
            options={[AS_IT_IS, NONE, ...plain(['3/8', '1/2', '5/8', 'M10', 'M12', 'M16'])]}
          />
          <TextField {...entry('dropMm')} kind="length" />
          <TextField {...entry('rodStockMm')} kind="length" />
          <TextField {...entry('supportCapacityKg')} kind="quantity" hint="As 150 kg or 330 lb." />
        </div>
      </Part>
    </>
  );
}
