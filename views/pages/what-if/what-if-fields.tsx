import type { JSX } from 'preact';
import type { Entered, FaultOf } from '../../components/fault-of.ts';
import { faultProps } from '../../components/fault-of.ts';
import { type Option, SelectField, TextField } from '../../components/field.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { whatIfEntryWord } from '../../words/what-if.ts';

export interface WhatIfFieldsProps {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly units: 'ft-in' | 'metric';
  readonly levels: readonly Option[];
  readonly types: readonly Option[];
  readonly activities: readonly Option[];
  readonly rows: Readonly<Record<'conditions' | 'activities' | 'types' | 'stock' | 'routes', number>>;
}

const AS_IS: Option = { value: '', word: 'as it is' };
const NONE: Option = { value: '', word: '–' };

/** What one asks about. Whatever stays empty is as it is in the job. */
export function WhatIfFields(props: WhatIfFieldsProps): JSX.Element {
  const { entered, faultOf, units, levels, types, activities, rows } = props;
  const example = units === 'ft-in' ? `40'-0"; 20'-0"` : '12 m; 6 m';
  const entry = (name: string) => ({
    name,
    label: whatIfEntryWord(name),
    value: entered[name] ?? '',
    ...faultProps(faultOf, name),
  });
  const of = { entered, faultOf };
  return (
    <>
      <RowFields
        {...of}
        caption="Conditions of work"
        hint="By level, or on every level at once; a lower row goes before a higher one."
        group="conditions"
        noun="change"
        rows={rows.conditions}
        fields={[
          { name: 'level', head: 'Level', options: [NONE, { value: '*', word: 'every level' }, ...levels] },
          { name: 'mountingHeightMm', head: 'Mounting height' },
          { name: 'congestion', head: 'Ceiling', options: [AS_IS, ...['open', 'normal', 'tight'].map(asOption)] },
          { name: 'liveArea', head: 'In service', options: [AS_IS, ...['yes', 'no'].map(asOption)] },
        ]}
      />
      <h3>Labour book</h3>
      <div class="fields">
        <SelectField
          {...entry('policy')}
          options={[AS_IS, { value: 'add', word: 'are added to each other' }, { value: 'compound', word: 'compound' }]}
        />
        <TextField {...entry('nonProductivePercent')} kind="number" />
        <SelectField {...entry('curve')} options={[AS_IS, { value: 'none', word: 'nobody learns' }]} />
        <TextField {...entry('learning.rate')} kind="number" />
        <TextField {...entry('learning.referenceRepeat')} kind="number" />
        <TextField {...entry('factors.normalPercent')} kind="number" />
        <TextField {...entry('factors.tightPercent')} kind="number" />
        <TextField {...entry('factors.storeyPercentEach')} kind="number" />
        <TextField {...entry('factors.livePercent')} kind="number" />
      </div>
      <RowFields
        {...of}
        caption="Labour units"
        hint="Likely labour hours of one unit; low, high and the hours by length move in the same proportion."
        group="activities"
        noun="change"
        rows={rows.activities}
        fields={[
          { name: 'activity', head: 'Activity', options: [NONE, ...activities] },
          { name: 'likely', head: 'Likely hours' },
        ]}
      />
      <RowFields
        {...of}
        caption="Another busway type"
        hint="For the runs of one type, on one level or on all of them."
        group="types"
        noun="change"
        rows={rows.types}
        fields={[
          { name: 'from', head: 'In place of', options: [NONE, ...types] },
          { name: 'to', head: 'This type', options: [NONE, ...types] },
          { name: 'level', head: 'Level', options: [{ value: '', word: 'every level' }, ...levels] },
        ]}
      />
      <RowFields
        {...of}
        caption="Other stock lengths"
        hint={`Of a type, separated by semicolons, as ${units === 'ft-in' ? `10'-0"; 5'-0"` : '3 m; 1.5 m'}. What has no price of its own counts at the type’s price by length, or is named as unpriced.`}
        group="stock"
        noun="change"
        rows={rows.stock}
        fields={[
          { name: 'type', head: 'Type', options: [NONE, ...types] },
          { name: 'lengthsMm', head: 'Stock lengths', kind: 'text' },
        ]}
      />
      <RowFields
        {...of}
        caption="Route"
        hint={`Every leg of a run in order, as ${example}, and the rod for each of its hangers.`}
        group="routes"
        noun="change"
        rows={rows.routes}
        fields={[
          { name: 'run', head: 'Run', kind: 'text' },
          { name: 'legsMm', head: 'Leg lengths', kind: 'text' },
          { name: 'dropMm', head: 'Rod' },
        ]}
      />
    </>
  );
}

function asOption(word: string): Option {
  return { value: word, word };
}
