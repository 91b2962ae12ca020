import type { JSX } from 'preact';
import type { FrozenBid, FrozenBidWhole, FrozenFigures } from '../../src/document/frozen-bid.ts';
import { besideEachOther, type Figure, type FigureDifference } from '../../src/domain/bid/compare-bids.ts';
import { itemWord } from '../../src/domain/bid/item-words.ts';
import { formatMoney } from '../../src/domain/units/money.ts';
import { formatHours } from '../../src/domain/units/quantities.ts';
import { DataTable } from '../components/data-table.tsx';
import { DefinitionList } from '../components/definition-list.tsx';
import { SelectField } from '../components/field.tsx';
import { Filter } from '../components/filter.tsx';
import { InventedNotice } from '../components/invented-notice.tsx';
import { Notice } from '../components/notice.tsx';
import { Part } from '../components/part.tsx';
import { Time } from '../components/time.tsx';
import { activityWord } from '../words/activities.ts';
import { bidLineWord } from '../words/bid-entries.ts';

export interface FrozenBidPageProps {
  readonly jobId: string;
  readonly bid: FrozenBidWhole;
  readonly currency: string;
  readonly zone: string | null;
  readonly others: readonly FrozenBid[];
  /** `now`, or the id of another frozen bid. */
  readonly beside: string;
  /** What stands beside it; null when the job has no bid now. */
  readonly figures: FrozenFigures | null;
}

/** A frozen bid, line by line beside another. */
export function FrozenBidPage({
  jobId,
  bid,
  currency,
  zone,
  others,
  beside,
  figures,
}: FrozenBidPageProps): JSX.Element {
  const own = bid.figures;
  const base = `/jobs/${jobId}/bid/frozen/${bid.id}`;
  const money = (minor: number) => formatMoney(minor, currency);
  return (
    <>
      {!bid.sound && (
        <Notice
          kind="stop"
          text="Inputs or figures no longer have the hash that they were frozen with: do not rely on them."
        />
      )}
      <InventedNotice version={own.labourBook} />
      <DefinitionList
        entries={[
          { term: 'Price', value: `${money(own.price)}${own.incomplete.length > 0 ? ', not complete' : ''}` },
          { term: 'Frozen', value: <Time at={new Date(bid.madeAt)} zone={zone} /> },
          { term: 'By', value: bid.madeBy },
          { term: 'Labour book', value: own.labourBook ?? 'none' },
          { term: 'SHA-256 of inputs and figures', value: <span class="hash">{bid.hash}</span> },
        ]}
      />
      {own.incomplete.length > 0 && (
        <ul>
          {own.incomplete.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <Filter action={base} clear={beside === 'now' ? null : base} label="What stands beside it">
        <SelectField
          name="beside"
          label="Beside"
          value={beside}
          options={[
            { value: 'now', word: 'the bid as it stands' },
            ...others.map((other) => ({ value: other.id, word: other.name })),
          ]}
        />
      </Filter>
      {figures === null && <Notice kind="note" text="The job has no bid now, so nothing stands beside this one." />}
      <Beside
        title="Lines"
        id="lines"
        rows={besideEachOther(lines(own), figures === null ? [] : lines(figures))}
        write={money}
      />
      <Beside
        title="Material"
        id="material"
        rows={besideEachOther(materials(own), figures === null ? [] : materials(figures))}
        write={money}
      />
      <Beside
        title="Alternates"
        id="alternates"
        rows={besideEachOther(alternates(own), figures === null ? [] : alternates(figures))}
        write={money}
        foot="none"
      />
      <Beside
        title="Unit prices"
        id="unit-prices"
        rows={besideEachOther(unitPrices(own), figures === null ? [] : unitPrices(figures))}
        write={money}
        foot="none"
      />
      <Beside
        title="Quotes, levelled"
        id="quotes"
        rows={besideEachOther(quotes(own), figures === null ? [] : quotes(figures))}
        write={money}
        foot="none"
      />
      <Beside
        title="Hours by activity"
        id="hours"
        rows={besideEachOther(hours(own), figures === null ? [] : hours(figures))}
        write={formatHours}
      />
    </>
  );
}

interface BesideProps {
  readonly title: string;
  readonly id: string;
  readonly rows: readonly FigureDifference[];
  readonly write: (value: number) => string;
  /** `none` where a sum of the rows would mean nothing. */
  readonly foot?: 'none';
}

function Beside({ title, id, rows, write, foot }: BesideProps) {
  if (rows.length === 0) return null;
  const cell = (value: number | null) => (value === null ? <span class="soft">–</span> : write(value));
  const sum = (of: 'before' | 'after') => rows.reduce((total, row) => total + (row[of] ?? 0), 0);
  const footed = (said: string) => (foot === 'none' ? {} : { foot: said });
  return (
    <Part title={title} id={id}>
      <DataTable
        caption={`${title}: frozen, and beside it`}
        rows={rows}
        keyOf={(row) => row.name}
        columns={[
          { head: 'Line', kind: 'name', cell: (row) => row.name, ...footed('Sum') },
          { head: 'Frozen', kind: 'number', cell: (row) => cell(row.before), ...footed(write(sum('before'))) },
          { head: 'Beside it', kind: 'number', cell: (row) => cell(row.after), ...footed(write(sum('after'))) },
          {
            head: 'Change',
            kind: 'number',
            cell: (row) => (row.change === 0 ? <span class="soft">none</span> : signed(row.change, write)),
            ...footed(signed(sum('after') - sum('before'), write)),
          },
        ]}
      />
    </Part>
  );
}

function signed(change: number, write: (value: number) => string): string {
  return change > 0 ? `+${write(change)}` : write(change);
}

function lines(figures: FrozenFigures): Figure[] {
  return figures.lines.map(({ line, label, amount }) => ({
    name: bidLineWord({ line, label: label ?? null }),
    value: amount,
  }));
}

function materials(figures: FrozenFigures): Figure[] {
  const named = (lines: FrozenFigures['materials'], before: string): Figure[] =>
    lines.map(({ type, item, detail, quantity, amount }) => ({
      name: [`${before}${item}${detail === null ? '' : ` ${detail}`}`, type].filter(Boolean).join(', '),
      value: quantity === 0 ? 0 : amount,
    }));
  return [...named(figures.materials, ''), ...named(figures.spares ?? [], 'spare ')];
}

function alternates(figures: FrozenFigures): Figure[] {
  return (figures.alternates ?? []).map(({ name, amount }) => ({ name, value: amount }));
}

function unitPrices(figures: FrozenFigures): Figure[] {
  return (figures.unitPrices?.lines ?? []).map(({ item, price }) => ({ name: itemWord(item as 'tap'), value: price }));
}

function quotes(figures: FrozenFigures): Figure[] {
  return (figures.quotes ?? []).map(({ package: of, id, supplier, levelled, chosen }) => ({
    name: `${of}: ${id}, ${supplier}${chosen ? ', chosen' : ''}`,
    value: levelled,
  }));
}

function hours(figures: FrozenFigures): Figure[] {
  return figures.byActivity.map(({ activity, hours: value }) => ({ name: activityWord(activity as 'joint'), value }));
}
