import type { JSX } from 'preact';
import { ESTIMATE_CLASSES } from '../../../src/domain/bid/estimate-class.ts';
import { itemWord } from '../../../src/domain/bid/item-words.ts';
import type { AlternatePrice, BidResult, BidTerms, UnitPrice, UnitPrices } from '../../../src/domain/bid/result.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { formatHours } from '../../../src/domain/units/quantities.ts';
import { DataTable } from '../../components/data-table.tsx';
import { type Definition, DefinitionList } from '../../components/definition-list.tsx';
import { Money } from '../../components/money.tsx';
import { Part } from '../../components/part.tsx';
import { Working } from '../../components/working.tsx';
import { bidLineWord } from '../../words/bid-entries.ts';
import { sayWorking } from '../../words/bid-working.ts';

/** What goes out with the price: alternates, unit prices and terms, as far as there are any. */
export function Offered({ bid, currency }: { bid: BidResult; currency: string }): JSX.Element {
  return (
    <>
      {bid.alternates.length > 0 && <Alternates alternates={bid.alternates} currency={currency} />}
      {bid.unitPrices !== null && <UnitPricesTable prices={bid.unitPrices} price={bid.price} currency={currency} />}
      <Terms terms={bid.terms} />
    </>
  );
}

function Alternates({ alternates, currency }: { alternates: readonly AlternatePrice[]; currency: string }) {
  return (
    <Part title="Alternates" id="alternates">
      <DataTable
        caption="Not in the price"
        rows={alternates}
        keyOf={({ entry }) => entry.name}
        columns={[
          { head: 'Alternate', kind: 'name', cell: ({ entry }) => entry.name },
          { head: 'It', cell: ({ entry }) => (entry.kind === 'add' ? 'adds' : 'deducts') },
          { head: 'Note', cell: ({ entry }) => entry.note },
          { head: 'On the price', kind: 'number', cell: (one) => <AlternateAmount of={one} currency={currency} /> },
        ]}
      />
    </Part>
  );
}

function AlternateAmount({ of, currency }: { of: AlternatePrice; currency: string }) {
  const money = (minor: number) => formatMoney(minor, currency);
  if (of.amount === null) return <Money minor={null} currency={currency} />;
  return (
    <Working
      figure={money(of.amount)}
      of={`the alternate ${of.entry.name}`}
      formula="its direct cost with the percentages of the bid"
      inputs={of.lines.map((line) => ({
        name: bidLineWord(line),
        value: money(line.amount),
        source: sayWorking(line, money),
      }))}
      source="Each line is rounded once. No contingency is on an alternate."
    />
  );
}

function UnitPricesTable({ prices, price, currency }: { prices: UnitPrices; price: number; currency: string }) {
  return (
    <Part title="Unit prices" id="unit-prices">
      <DataTable
        caption="The price of one"
        remark={`in no unit price: ${formatMoney(prices.remainder, currency)}`}
        rows={prices.lines}
        keyOf={({ item }) => item}
        columns={[
          { head: 'Thing', kind: 'name', cell: ({ item }) => itemWord(item), foot: 'With what is in none' },
          {
            head: 'Quantity',
            kind: 'number',
            cell: ({ quantity, unit }) => `${quantity.toLocaleString('en-US')}${unit === 'each' ? '' : ` ${unit}`}`,
          },
          {
            head: 'Unit price',
            kind: 'number',
            cell: (line) => <UnitFigure line={line} factor={prices.factor} currency={currency} />,
          },
          {
            head: 'Extended',
            kind: 'number',
            cell: ({ extended }) => <Money minor={extended} currency={currency} />,
            foot: formatMoney(price, currency),
          },
        ]}
      />
      <p class="soft">
        Material with waste, escalation and tax, likely hours at the cost of a productive one, then overhead, bond and
        profit. Contingency and what is entered as a sum are in no unit price; they are what remains of the price.
      </p>
    </Part>
  );
}

function UnitFigure({ line, factor, currency }: { line: UnitPrice; factor: number; currency: string }) {
  const used = line.offered ?? line.worked;
  if (used === null || line.cost === null) return <Money minor={used} currency={currency} />;
  const money = (minor: number) => formatMoney(Math.round(minor), currency);
  return (
    <Working
      figure={`${money(used)}${line.offered === null ? '' : ' offered'}`}
      of={`the unit price of ${itemWord(line.item)}`}
      formula="unit price = direct cost of one × overhead, bond and profit"
      filledIn={`${money(line.worked ?? 0)} = ${money(line.cost)} × ${Number(factor.toFixed(6))}`}
      inputs={[
        { name: 'material of one', value: money(line.material ?? 0), source: 'before waste, escalation and tax' },
        { name: 'hours of one', value: formatHours(line.hours), source: 'likely, over all that are counted' },
      ]}
      source="The same build-up as the price."
    />
  );
}

function Terms({ terms }: { terms: BidTerms }) {
  const entries = termEntries(terms);
  if (entries.length === 0) return null;
  return (
    <Part title="Goes out with the price" id="terms">
      <DefinitionList entries={entries} />
      {terms.estimateClass !== null && (
        <p class="soft">
          Classes and their usual accuracy are those of AACE 56R-08 for buildings, from memory: check them with the
          practice before they are relied on. They are no promise of this price.
        </p>
      )}
    </Part>
  );
}

function termEntries(terms: BidTerms): Definition[] {
  const list = (term: string, said: readonly string[]): Definition[] =>
    said.length === 0
      ? []
      : [
          {
            term,
            value: (
              <ul>
                {said.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            ),
          },
        ];
  const fact = (term: string, value: string | null): Definition[] => (value === null ? [] : [{ term, value }]);
  return [
    ...fact('Day of the bid', terms.date),
    ...fact('Holds until', terms.validUntil),
    ...fact('Estimate class', terms.estimateClass === null ? null : sayClass(terms.estimateClass)),
    ...list(
      'Addenda acknowledged',
      terms.addenda.map(({ number, date, note }) => [number, date, note].filter((part) => part !== null).join(', ')),
    ),
    ...list('Included', terms.inclusions),
    ...list('Furnished by the owner, installed by us', terms.ownerFurnished.map(itemWord)),
    ...list('Not included', terms.exclusions),
    ...list('The price supposes', terms.qualifications),
  ];
}

function sayClass(of: NonNullable<BidTerms['estimateClass']>): string {
  const { maturity, use, low, high } = ESTIMATE_CLASSES[of];
  return `${of}: ${use}; design ${maturity} complete; the cost usually ends ${-low[1]} to ${-low[0]} % below or ${high[0]} to ${high[1]} % above`;
}
