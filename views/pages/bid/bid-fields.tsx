import type { JSX } from 'preact';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField } from '../../components/field.tsx';
import { bidEntryWord } from '../../words/bid-entries.ts';

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
  return (
    <div class="fields">
      <TextField {...entry('materials')} hint={`In ${currency}. Empty: the takeoff at the prices of the types.`} />
      <TextField {...entry('taxPercent')} kind="number" hint="0 where none is due." />
      <TextField {...entry('other')} hint={`In ${currency}: lifts, freight, seals, labels, slot closure, permit.`} />
      <TextField {...entry('supervision')} hint={`In ${currency}. Not in the hours.`} />
      <TextField {...entry('contingencyP')} kind="number" hint="80 adds the step from P50 to P80 of the hours." />
      <TextField {...entry('overheadPercent')} kind="number" />
      <SelectField
        {...entry('profit.kind')}
        options={[
          { value: 'markup', word: 'markup on cost' },
          { value: 'margin', word: 'margin of the price' },
        ]}
      />
      <TextField {...entry('profit.percent')} kind="number" hint="A 10 % markup is a 9.1 % margin." />
    </div>
  );
}
