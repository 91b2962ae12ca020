import type { JSX } from 'preact';
import { QUOTED_ITEMS, type QuotedItem } from '../../../src/domain/bid/bid-entries.ts';
import { itemWord } from '../../../src/domain/bid/item-words.ts';
import { type Entered, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField, TickField } from '../../components/field.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { bidCellWord } from '../../words/bid-entries.ts';
import type { RowsProps } from './cost-fields.tsx';
import { rowsToShow } from './rows.ts';

const IN_OR_OUT = [
  { value: '', word: 'not said' },
  { value: 'in', word: 'in its amounts' },
  { value: 'out', word: 'out' },
];

function itemOption(item: QuotedItem) {
  return { value: item, word: item === 'lot' ? 'the lot: all that is counted' : itemWord(item) };
}

/** Every quote with its lines under its name, and one empty quote for the next. One with something wrong stands open. */
export function QuoteFields(props: RowsProps): JSX.Element {
  const count = rowsToShow(props.entered, 'quotes', ['goesTo', 'state'], 0);
  return (
    <>
      {Array.from({ length: count + 1 }, (_, row) => (
        <details key={row} open={count === 0 || hasFault(row, props)}>
          <summary>{row === count ? 'Enter a quote' : nameOf(row, props.entered)}</summary>
          <QuoteEntry row={row} {...props} />
        </details>
      ))}
    </>
  );
}

function nameOf(row: number, entered: Entered): string {
  const said = (cell: string) => (entered[`quotes[${row}].${cell}`] ?? '').trim();
  const named = [said('id'), said('supplier')].filter((part) => part !== '').join(', ');
  return `Quote ${named === '' ? row + 1 : named}${said('chosen') === 'yes' ? ' – chosen' : ''}`;
}

const CELLS = [
  ...['id', 'package', 'goesTo', 'supplier', 'date', 'validUntil', 'currency', 'freight', 'freightAmount'],
  ...['tax', 'taxAmount', 'note', 'firm', 'chosen', 'lines'],
];
const LINE_CELLS = ['item', 'detail', 'state', 'amount'];

function hasFault(row: number, { entered, faultOf }: RowsProps): boolean {
  const lines = rowsToShow(entered, `quotes[${row}].lines`, ['state'], 0);
  return [
    ...CELLS,
    ...Array.from({ length: lines }, (_, line) => LINE_CELLS.map((cell) => `lines[${line}].${cell}`)).flat(),
  ].some((cell) => faultOf(`quotes[${row}].${cell}`) !== undefined);
}

function QuoteEntry({ row, entered, faultOf, currency }: RowsProps & { readonly row: number }) {
  const at = (cell: string) => `quotes[${row}].${cell}`;
  const entry = (cell: string) => ({
    name: at(cell),
    label: bidCellWord(cell),
    value: entered[at(cell)] ?? '',
    ...faultProps(faultOf, at(cell)),
  });
  const tick = (cell: string) => {
    const { value, ...rest } = entry(cell);
    return <TickField {...rest} ticked={value === 'yes' ? 'yes' : 'no'} />;
  };
  const called = entered[at('id')] ?? '';
  return (
    <fieldset class="stack" id={`quote-${row}`}>
      <legend>{called === '' ? `Quote ${row + 1}` : `Quote ${called}`}</legend>
      <div class="fields">
        <TextField {...entry('id')} hint="A short name, as A." />
        <TextField {...entry('package')} hint="Quotes of one package stand side by side." />
        <SelectField
          {...entry('goesTo')}
          options={[
            { value: 'materials', word: 'material' },
            { value: 'subcontracts', word: 'subcontracts' },
          ]}
        />
        <TextField {...entry('supplier')} />
        <TextField {...entry('date')} kind="date" />
        <TextField {...entry('validUntil')} kind="date" />
        <TextField {...entry('currency')} hint={`Empty: ${currency}.`} />
        <SelectField {...entry('freight')} options={IN_OR_OUT} />
        <TextField {...entry('freightAmount')} hint={`In ${currency}, where it is out.`} />
        <SelectField {...entry('tax')} options={IN_OR_OUT} />
        <TextField {...entry('taxAmount')} hint={`In ${currency}, where it is in.`} />
        <TextField {...entry('note')} />
        {tick('firm')}
        {tick('chosen')}
      </div>
      <RowFields
        caption="Line by line"
        remark="what it prices, includes and lacks"
        hint="Of a line that lacks, the amount is the plug that stands in for it; without one it stays at our own prices, or is missing where we have none. The lot takes the place of all else that is counted."
        group={`quotes[${row}].lines`}
        noun="line"
        rows={rowsToShow(entered, `quotes[${row}].lines`, ['state'], 3)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          {
            name: 'item',
            head: bidCellWord('item'),
            options: [{ value: '', word: '–' }, ...QUOTED_ITEMS.map(itemOption)],
          },
          { name: 'detail', head: bidCellWord('detail'), kind: 'text' },
          {
            name: 'state',
            head: bidCellWord('state'),
            options: [
              { value: 'priced', word: 'priced' },
              { value: 'included', word: 'included' },
              { value: 'lacks', word: 'lacking' },
            ],
          },
          { name: 'amount', head: bidCellWord('amount') },
        ]}
      />
      {called !== '' && (
        <TickField
          name={at('remove')}
          label={`Take quote ${called} out`}
          ticked={entered[at('remove')] === 'yes' ? 'yes' : 'no'}
        />
      )}
    </fieldset>
  );
}
