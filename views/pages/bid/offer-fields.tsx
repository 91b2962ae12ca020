import type { JSX } from 'preact';
import { UNIT_ITEMS } from '../../../src/domain/bid/bid-entries.ts';
import { ESTIMATE_CLASSES } from '../../../src/domain/bid/estimate-class.ts';
import { itemWord } from '../../../src/domain/bid/item-words.ts';
import { faultProps } from '../../components/fault-of.ts';
import { SelectField, TextArea, TextField } from '../../components/field.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { bidCellWord, bidEntryWord } from '../../words/bid-entries.ts';
import type { RowsProps } from './cost-fields.tsx';
import { rowsToShow } from './rows.ts';

const text = (name: string) => ({ name, head: bidCellWord(name), kind: 'text' as const });
const figure = (name: string) => ({ name, head: bidCellWord(name) });

const CLASSES = ([5, 4, 3, 2, 1] as const).map((of) => ({
  value: String(of),
  word: `${of}: ${ESTIMATE_CLASSES[of].use}`,
}));

/** What goes out with the price: its day, alternates, unit prices, and what it holds and supposes. */
export function OfferFields({ entered, faultOf, currency }: RowsProps): JSX.Element {
  const entry = (path: string) => ({
    name: path,
    label: bidEntryWord(path),
    value: entered[path] ?? '',
    ...faultProps(faultOf, path),
  });
  const rows = { entered, faultOf };
  return (
    <>
      <div class="fields">
        <TextField {...entry('date')} kind="date" hint="Quotes are judged by it." />
        <TextField {...entry('validUntil')} kind="date" />
        <SelectField
          {...entry('estimateClass')}
          hint="By AACE 56R-08 for buildings."
          options={[{ value: '', word: 'not stated' }, ...CLASSES]}
        />
      </div>
      <RowFields
        caption="Alternates"
        remark="at their direct cost; the percentages of the bid go on them"
        hint={`Amounts in ${currency}, above nought for both kinds. An alternate is never in the price.`}
        room="roomy"
        group="alternates"
        noun="alternate"
        rows={rowsToShow(entered, 'alternates', ['kind'], 2)}
        {...rows}
        fields={[
          text('name'),
          {
            ...figure('kind'),
            options: [
              { value: 'add', word: 'adds' },
              { value: 'deduct', word: 'deducts' },
            ],
          },
          figure('materials'),
          figure('hours'),
          figure('subcontracts'),
          figure('other'),
          text('note'),
        ]}
      />
      <RowFields
        caption="Unit prices"
        remark="what the bid form asks a price of one for"
        hint={`In ${currency}. Empty: worked from the build-up. Material of one is asked where the job has no price for it alone.`}
        group="unitPrices"
        noun="unit price"
        rows={rowsToShow(entered, 'unitPrices', [], 2)}
        {...rows}
        fields={[
          {
            ...figure('item'),
            options: [{ value: '', word: '–' }, ...UNIT_ITEMS.map((item) => ({ value: item, word: itemWord(item) }))],
          },
          figure('material'),
          figure('offered'),
        ]}
      />
      <RowFields
        caption="Addenda that the bid acknowledges"
        hint="As numbered by who issued them; dates like 2026-05-12."
        group="addenda"
        noun="addendum"
        rows={rowsToShow(entered, 'addenda', [], 2)}
        {...rows}
        fields={[text('number'), text('date'), text('note')]}
      />
      <div class="fields">
        <TextArea {...entry('inclusions')} hint="One a line." rows={6} />
        <TextArea {...entry('exclusions')} hint="One a line." rows={6} />
        <TextArea {...entry('qualifications')} hint="One a line." rows={6} />
      </div>
    </>
  );
}
