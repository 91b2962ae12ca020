import type { JSX } from 'preact';
import { TAXABLE } from '../../../src/domain/bid/bid-entries.ts';
import type { Entered, FaultOf } from '../../components/fault-of.ts';
import { RowFields } from '../../components/row-fields.tsx';
import { BID_LINE_WORDS, bidCellWord } from '../../words/bid-entries.ts';
import { rowsToShow } from './rows.ts';

export interface RowsProps {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly currency: string;
}

const text = (name: string) => ({ name, head: bidCellWord(name), kind: 'text' as const });
const figure = (name: string) => ({ name, head: bidCellWord(name) });

/** Lifts, tools and supervision by time, subcontracts, and taxes by category. */
export function CostFields({ entered, faultOf, currency }: RowsProps): JSX.Element {
  return (
    <>
      <RowFields
        caption="Paid by time"
        remark="lifts, tools, people who are not in the hours"
        hint={`Number × time × rate, and what is paid once for all of them, as delivery. Rates in ${currency}; a row without one is missing from the price. Empty a row to take it out.`}
        room="roomy"
        group="timed"
        noun="row"
        rows={rowsToShow(entered, 'timed', ['goesTo', 'per'], 2)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          text('item'),
          {
            ...figure('goesTo'),
            options: [
              { value: 'equipment', word: 'lifts and tools' },
              { value: 'supervision', word: 'supervision' },
            ],
          },
          figure('number'),
          figure('time'),
          {
            ...figure('per'),
            options: [
              { value: 'week', word: 'weeks' },
              { value: 'day', word: 'days' },
              { value: 'month', word: 'months' },
            ],
          },
          figure('rate'),
          figure('once'),
        ]}
      />
      <RowFields
        caption="Subcontracts"
        remark="entered as a sum; those that are quoted belong to the quotes"
        hint="A sum that is not known yet stays empty, and the price says that it is not complete. Take out of the labour book what a subcontract does."
        group="subcontracts"
        noun="subcontract"
        rows={rowsToShow(entered, 'subcontracts', ['work'], 2)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          text('item'),
          {
            ...figure('work'),
            options: [
              { value: 'other', word: 'other' },
              { value: 'fire-sealing', word: 'fire sealing' },
              { value: 'testing', word: 'testing' },
            ],
          },
          figure('amount'),
        ]}
      />
      <RowFields
        caption="Taxes by category"
        remark="each on the lines that it is due on"
        hint="Material counts with its waste, spares and escalation. What is taxed is for the local law and the owner’s exemption to say."
        group="taxes"
        noun="tax"
        rows={rowsToShow(entered, 'taxes', [], 2)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          text('name'),
          figure('percent'),
          ...TAXABLE.map((line) => ({
            name: `on.${line}`,
            head: BID_LINE_WORDS[line],
            options: [
              { value: '', word: '–' },
              { value: 'yes', word: 'yes' },
            ],
          })),
        ]}
      />
    </>
  );
}
