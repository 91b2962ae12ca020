import type { JSX } from 'preact';
import { UNIT_ITEMS } from '../../../src/domain/bid/bid-entries.ts';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField, TickField } from '../../components/field.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { bidEntryWord, ownedWord } from '../../words/bid-entries.ts';
import { rowsToShow } from './rows.ts';

export interface BidFieldsProps {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly currency: string;
}

/** What takeoff and hours do not say. Nothing here has a value of its own: what stays empty is not in the price. */
export function BidFields({ entered, faultOf, currency }: BidFieldsProps): JSX.Element {
  const entry = (path: string) => ({
    name: path,
    label: bidEntryWord(path),
    value: entered[path] ?? '',
    ...faultProps(faultOf, path),
  });
  const money = (path: string, hint?: string) => (
    <TextField {...entry(path)} hint={hint === undefined ? `In ${currency}.` : `In ${currency}. ${hint}`} />
  );
  return (
    <>
      <h3>Material</h3>
      <div class="fields">
        {money('materials', 'Empty: the takeoff at the prices of the types, or the quotes that are chosen.')}
        <TextField {...entry('wastePercent')} kind="number" hint="On what is bought by our own count, not on quotes." />
        {money('spares', 'Empty: spares by the rules for ordering, priced. 0: the material holds them.')}
        <TextField {...entry('escalationPercent')} kind="number" hint="With the waste; not on quotes that are held." />
        {money('freight', 'Beside what quotes have in or out.')}
        <TextField
          {...entry('taxPercent')}
          kind="number"
          hint="0 where none is due. Other taxes are entered by category, below."
        />
      </div>
      <Owners entered={entered} />
      <h3>Work and site</h3>
      <div class="fields">
        <TextField {...entry('consumablesPercent')} kind="number" hint="Or a sum beside it." />
        {money('consumables')}
        {money('other', 'What no other line holds: seals, labels, slot closure.')}
        {money('supervision', 'Not in the hours, and not paid by time below.')}
        {money('permit')}
        <TextField {...entry('contingencyP')} kind="number" hint="80 adds the step from P50 to P80 of the hours." />
      </div>
      <h3>From cost to price</h3>
      <div class="fields">
        <TextField {...entry('overheadPercent')} kind="number" />
        <SelectField
          {...entry('bond.of')}
          options={[
            { value: 'price', word: 'price, itself and the profit in it' },
            { value: 'cost', word: 'cost with overhead' },
          ]}
        />
        <TextField
          {...entry('bond.percent')}
          kind="number"
          hint="1.2 is 12 for each 1,000; by a scale, of what is above its steps."
        />
        <SelectField
          {...entry('profit.kind')}
          options={[
            { value: '', word: 'markup or margin? choose' },
            { value: 'markup', word: 'markup on cost' },
            { value: 'margin', word: 'margin of the price' },
          ]}
        />
        <TextField {...entry('profit.percent')} kind="number" hint="A 10 % markup is a 9.1 % margin." />
      </div>
      <BondScale entered={entered} faultOf={faultOf} currency={currency} />
    </>
  );
}

/** Owner-furnished, contractor-installed: in the hours, and in no sum that is taxed. */
function Owners({ entered }: Pick<BidFieldsProps, 'entered'>) {
  const paths = UNIT_ITEMS.map((item) => `ownerFurnished.${item}`);
  return (
    <details open={paths.some((path) => entered[path] === 'yes')}>
      <summary>Furnished by the owner</summary>
      <p class="hint">Installed by us: in the hours, neither bought nor taxed. Not for a sum that is entered above.</p>
      <div class="fields">
        {paths.map((path) => (
          <TickField key={path} name={path} label={ownedWord(path)} ticked={entered[path] === 'yes' ? 'yes' : 'no'} />
        ))}
      </div>
    </details>
  );
}

/** Folded away until there is one: most bonds have one rate. */
function BondScale({ entered, faultOf, currency }: BidFieldsProps) {
  const rows = rowsToShow(entered, 'bond.scale', [], 2);
  return (
    <details open={rows > 2}>
      <summary>Bond by a scale</summary>
      <RowFields
        caption="Steps of the bond"
        remark="from the bottom up"
        hint={`The first so much in ${currency} at its rate, the next so much at another; what is above all steps takes the rate above. Empty: one rate.`}
        group="bond.scale"
        noun="step"
        rows={rows}
        entered={entered}
        faultOf={faultOf}
        fields={[
          { name: 'amount', head: 'First or next' },
          { name: 'percent', head: 'Bond, %' },
        ]}
      />
    </details>
  );
}
