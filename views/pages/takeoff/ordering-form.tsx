import type { JSX } from 'preact';
import { ACTIVITIES } from '../../../src/domain/labour/result.ts';
import { ORDER_ITEMS } from '../../../src/domain/ordering/ordering.ts';
import { Button } from '../../components/button.tsx';
import { type Conflict, ConflictList } from '../../components/conflict-list.tsx';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { Notice } from '../../components/notice.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { handWords } from '../../drawings/strip/words.ts';
import { activityWord } from '../../words/activities.ts';
import { orderItemWord } from '../../words/order-items.ts';
import { orderingEntryWord } from '../../words/ordering-entries.ts';

export interface OrderingFormProps {
  readonly action: string;
  readonly csrf: string;
  readonly version?: number;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
  readonly conflicts: readonly Conflict[] | null;
  readonly types: readonly string[];
  readonly lengthExample: string;
  /** The tools below are a suggestion that nobody has saved. */
  readonly toolsSuggested: boolean;
  readonly rows: { readonly spares: number; readonly leadDays: number; readonly tools: number };
}

const HANDS = [
  'inside',
  'outside',
  'slot-inside',
  'slot-outside',
  'near-left',
  'near-right',
  'far-left',
  'far-right',
] as const;
const ITEMS = [{ value: '', word: '' }, ...ORDER_ITEMS.map((item) => ({ value: item, word: orderItemWord(item) }))];

/** The job's own rules for ordering. Nothing here has a value of its own: what stays empty is not ordered. */
export function OrderingForm(props: OrderingFormProps): JSX.Element {
  const { action, csrf, version, entered, faultOf, summary, conflicts, types, rows, lengthExample } = props;
  const entry = (name: string) => ({
    name,
    label: orderingEntryWord(name),
    value: entered[name] ?? '',
    ...faultProps(faultOf, name),
  });
  return (
    <>
      <FormFaults faults={summary} />
      {conflicts !== null && <ConflictList conflicts={conflicts} theirsHref={action} wordOf={orderingEntryWord} />}
      <Form action={action} csrf={csrf} {...(version === undefined ? {} : { version })}>
        <RowFields
          caption="Waste and spares"
          hint="The first rule that fits a thing is its rule; what a rule leaves empty fits everything. Kind: cut, L1-N 30 A, 3/8. Spares are the greater of the two, rounded up, over the whole job."
          group="spares"
          noun="rule"
          fields={[
            { name: 'item', head: 'Item', options: ITEMS },
            {
              name: 'type',
              head: 'Busway type',
              options: [{ value: '', word: 'any' }, ...types.map((id) => ({ value: id, word: id }))],
            },
            { name: 'kind', head: 'Kind', kind: 'text' },
            {
              name: 'hand',
              head: 'Hand',
              options: [{ value: '', word: 'any' }, ...HANDS.map((hand) => ({ value: hand, word: handWords(hand) }))],
            },
            { name: 'lengthMm', head: 'Length' },
            { name: 'wastePercent', head: 'Waste', unit: '%' },
            { name: 'percent', head: 'Spares', unit: '%' },
            { name: 'minimum', head: 'At least' },
            { name: 'ownerSpares', head: 'Owner’s' },
          ]}
          rows={rows.spares}
          room="roomy"
          entered={entered}
          faultOf={faultOf}
        />
        <RowFields
          caption="Lead times"
          hint="Calendar days from placing the order to the goods on the floor: submittals, making, transit, receiving."
          group="leadDays"
          noun="lead time"
          fields={[
            { name: 'item', head: 'Item', options: ITEMS },
            { name: 'days', head: 'Days' },
          ]}
          rows={rows.leadDays}
          entered={entered}
          faultOf={faultOf}
        />
        <div class="fields">
          <SelectField
            {...entry('plan')}
            options={[
              { value: entered.plan === 'continuous' ? 'continuous' : '', word: 'no crew standing' },
              { value: 'earliest', word: 'each as soon as it can' },
            ]}
          />
          <TextField
            {...entry('cordStockMm')}
            hint={`Separated by ; and each as ${lengthExample}. Empty: each cord at its own length.`}
          />
          <TextField {...entry('closure.stockMm')} kind="length" hint="Empty: slot closure is ordered in metres." />
          <TextField {...entry('closure.wastePercent')} kind="number" unit="%" />
          <TextField {...entry('washersPerRod')} kind="number" hint="Empty: none are listed." />
          <TextField
            {...entry('braceEverySupports')}
            kind="number"
            hint="An allowance alone: where braces stand is the engineer’s."
          />
        </div>
        {props.toolsSuggested && (
          <Notice kind="note" text="The tools are a suggestion from the sheets of this job: change them, then save." />
        )}
        <RowFields
          caption="Tools by crew"
          hint="Crews: empty takes those of the crew plan that do the work; a number stands above the plan."
          group="tools"
          noun="tool"
          fields={[
            { name: 'tool', head: 'Tool', kind: 'text' },
            { name: 'perCrew', head: 'For a crew' },
            {
              name: 'activity',
              head: 'Needed for',
              options: [
                { value: '', word: 'every crew' },
                ...ACTIVITIES.map((id) => ({ value: id, word: activityWord(id) })),
              ],
            },
            { name: 'crews', head: 'Crews, by hand' },
            { name: 'note', head: 'Note', kind: 'text' },
          ]}
          rows={rows.tools}
          room="roomy"
          entered={entered}
          faultOf={faultOf}
        />
        <Button kind="lead">{conflicts === null ? 'Save the rules' : 'Keep mine: save over theirs'}</Button>
      </Form>
    </>
  );
}
