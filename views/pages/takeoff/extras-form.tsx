import type { JSX } from 'preact';
import { Button } from '../../components/button.tsx';
import { type Conflict, ConflictList } from '../../components/conflict-list.tsx';
import type { Entered, FaultOf } from '../../components/fault-of.ts';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { orderingEntryWord } from '../../words/ordering-entries.ts';

export interface ExtrasFormProps {
  readonly action: string;
  readonly csrf: string;
  readonly version?: number;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
  readonly conflicts: readonly Conflict[] | null;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly currency: string;
  readonly rows: number;
}

/** Lines that the estimator adds to takeoff, hours and bid by hand. */
export function ExtrasForm(props: ExtrasFormProps): JSX.Element {
  const { action, csrf, version, entered, faultOf, summary, conflicts, levels, currency, rows } = props;
  return (
    <>
      <p class="soft">
        Every line stands in the takeoff, the order list, the hours and the bid as “added by hand”. Hours are labour
        hours; the non-productive share comes on top of them as of all others.
      </p>
      <FormFaults faults={summary} />
      {conflicts !== null && <ConflictList conflicts={conflicts} theirsHref={action} wordOf={orderingEntryWord} />}
      <Form action={action} csrf={csrf} {...(version === undefined ? {} : { version })}>
        <RowFields
          caption="Lines by hand"
          hint={`Price in ${currency} and hours are of one; a credit has a negative price. A line without a level belongs to the whole job. Empty rows are left out.`}
          group="extras"
          noun="line"
          fields={[
            { name: 'item', head: 'What is added', kind: 'text' },
            {
              name: 'level',
              head: 'Level',
              options: [{ value: '', word: 'whole job' }, ...levels.map(({ id, name }) => ({ value: id, word: name }))],
            },
            { name: 'quantity', head: 'Quantity' },
            { name: 'unit', head: 'Unit', kind: 'text' },
            { name: 'price', head: 'Price of one' },
            { name: 'hours', head: 'Hours of one', unit: 'h' },
            { name: 'note', head: 'Note', kind: 'text' },
          ]}
          rows={rows}
          room="roomy"
          entered={entered}
          faultOf={faultOf}
        />
        <Button kind="lead">{conflicts === null ? 'Save the lines' : 'Keep mine: save over theirs'}</Button>
      </Form>
    </>
  );
}
