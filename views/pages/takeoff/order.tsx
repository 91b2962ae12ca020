import type { JSX } from 'preact';
import type { Finding } from '../../../src/domain/finding.ts';
import type { BuswayType, UnitSystem } from '../../../src/domain/model.ts';
import type { ToolLine } from '../../../src/domain/ordering/crew-tools.ts';
import type { Need } from '../../../src/domain/ordering/need-dates.ts';
import type { Order, OrderLine } from '../../../src/domain/ordering/order-list.ts';
import type { OrderThing } from '../../../src/domain/ordering/order-things.ts';
import type { Ordering } from '../../../src/domain/ordering/ordering.ts';
import type { Spares } from '../../../src/domain/ordering/spares.ts';
import { groupBy } from '../../../src/domain/takeoff/group-by.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { shownQuantity } from '../../../src/domain/units/quantities.ts';
import { ButtonLink } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { SelectField } from '../../components/field.tsx';
import { Filter } from '../../components/filter.tsx';
import { FindingList } from '../../components/finding-list.tsx';
import { InventedNotice } from '../../components/invented-notice.tsx';
import { Notice } from '../../components/notice.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';
import { Part } from '../../components/part.tsx';
import { activityWord } from '../../words/activities.ts';
import { noDateWords, orderLineWords, purposeWord } from '../../words/order-items.ts';
import { sheetWord } from '../../words/takeoff-items.ts';
import { CountedFrom, type MarksOf, sayQuantity } from './counted-from.tsx';

export interface OrderPageProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly level: string;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly ordering: Ordering | null;
  readonly manned: boolean;
  readonly today: string;
  readonly orders: readonly Order[];
  readonly pager: PagerProps | null;
  readonly spares: Spares;
  readonly cords: readonly Finding[];
  readonly strips: readonly { readonly length: number; readonly count: number }[];
  readonly tools: readonly ToolLine[];
  readonly toolsStated: boolean;
  readonly labourBook: string | null;
  readonly leftOut: readonly string[];
  readonly marksOf: MarksOf;
  /** Where the places of a thing stand in pages. */
  readonly placesHref: (thing: Omit<OrderThing, 'parts' | 'quantity' | 'unit'>) => string;
}

/** What to order: by floor and need date, then spares and the crews' tools. */
export function OrderPage(props: OrderPageProps): JSX.Element {
  const { jobId, level, levels, orders, pager, manned, ordering, cords, leftOut } = props;
  const base = `/jobs/${jobId}/takeoff/order`;
  return (
    <>
      <Filter action={base} clear={level === '' ? null : base} label="Which floor">
        <SelectField
          name="level"
          label="Of"
          value={level}
          options={[{ value: '', word: 'all levels' }, ...levels.map((one) => ({ value: one.id, word: one.name }))]}
        />
      </Filter>
      {!manned && (
        <Notice kind="note" text="There is no crew plan, so no thing has a need date: the list is by floor alone." />
      )}
      <InventedNotice version={props.labourBook} />
      {leftOut.length > 0 && <Notice kind="stop" text={sayLeftOut(leftOut)} />}
      {cords.length > 0 && <Cords cords={cords} units={props.units} />}
      {orders.length === 0 && <EmptyState text="Nothing is counted yet: runs with a sound layout come first." />}
      {floorsOf(orders).map((floor) => (
        <Floor key={floor[0].level ?? ''} orders={floor} of={props} />
      ))}
      {pager !== null && <Pager {...pager} />}
      <Strips {...props} />
      {level === '' && <SpareParts {...props} />}
      {level === '' && <Tools {...props} />}
      <p class="soft">
        {manned &&
          `Need dates are the mornings on which the first crew that works with a thing starts on the level, ${
            (ordering?.plan ?? 'continuous') === 'continuous' ? 'no crew standing' : 'each crew as soon as it can'
          }. `}
        The last day to order is the need date less the lead time in calendar days. Marks of what is not released yet
        are numbered from the feed. Whether a strip may lie across a joint is the maker’s sheet to say; check kinds and
        hands against the approved drawing before ordering.
      </p>
    </>
  );
}

/** At the head of the page. */
export function OrderTools({ jobId, csv, design }: { jobId: string; csv: string; design: boolean }): JSX.Element {
  const base = `/jobs/${jobId}/takeoff`;
  return (
    <>
      <ButtonLink href={base}>Takeoff</ButtonLink>
      {design && <ButtonLink href={`${base}/rules`}>Rules for ordering</ButtonLink>}
      <ButtonLink href={csv}>As CSV</ButtonLink>
      <ButtonLink href={`${base}.xlsx`}>As a workbook</ButtonLink>
    </>
  );
}

/** The orders of one level, one after the other. */
function Floor({ orders, of }: { orders: readonly [Order, ...Order[]]; of: OrderPageProps }) {
  const { units, types, marksOf, placesHref, levels, today } = of;
  const own = ({ item, type }: OrderLine) =>
    item === 'clamp' || item === 'contact-set' ? sheetWord(item, types.get(type ?? '')) : null;
  const { level } = orders[0];
  const rows = orders.flatMap((order) => order.lines.map((line) => ({ order, line })));
  return (
    <DataTable
      caption={level === null ? 'Whole job' : (levels.find(({ id }) => id === level)?.name ?? level)}
      remark={orders.length === 1 ? 'one order' : `${orders.length} orders`}
      rows={rows.map((row, index) => ({ ...row, index }))}
      keyOf={({ index }) => String(index)}
      columns={[
        { head: 'Order', kind: 'number', cell: ({ order }) => order.number },
        { head: 'Order by', cell: ({ order }) => sayOrderBy(order, today) },
        { head: 'Needed', cell: ({ order }) => <Needed need={order.need} /> },
        {
          head: 'Item',
          kind: 'name',
          cell: ({ line }) => (
            <>
              {orderLineWords(line)}
              {own(line) !== null && <span class="soft"> ({own(line)})</span>}
            </>
          ),
        },
        {
          head: 'Length',
          kind: 'number',
          cell: ({ line }) => (line.length === null ? '' : formatLength(line.length, units)),
        },
        { head: 'Busway type', cell: ({ line }) => line.type ?? '' },
        { head: 'For', cell: ({ line }) => purposeWord(line) },
        {
          head: 'Quantity',
          kind: 'number',
          cell: ({ line }) =>
            line.purpose === 'work' ? (
              <CountedFrom
                words={orderLineWords(line)}
                quantity={shownQuantity(line, units).quantity}
                parts={line.parts}
                units={units}
                marksOf={marksOf}
                href={placesHref(line)}
              />
            ) : (
              sayQuantity(shownQuantity(line, units).quantity)
            ),
        },
        { head: 'Unit', cell: ({ line }) => shownQuantity(line, units).unit },
      ]}
    />
  );
}

/** Orders stand by level already. */
function floorsOf(orders: readonly Order[]): readonly (readonly [Order, ...Order[]])[] {
  return groupBy(orders, ({ level }) => level ?? '');
}

function sayOrderBy({ need, orderBy }: Order, today: string): string {
  if (need.date === null) return '';
  if (orderBy === null) return 'no lead time';
  return orderBy < today ? `${orderBy}, past` : orderBy;
}

function Needed({ need }: { need: Need }) {
  if (need.date === null) return <span class="soft">{noDateWords(need.why)}</span>;
  return (
    <>
      {need.date} <span class="soft">{need.crew}</span>
    </>
  );
}

const ROWS_SHOWN = 100;

function Cords({ cords, units }: { cords: readonly Finding[]; units: UnitSystem }) {
  const count = cords.length === 1 ? 'One drop is' : `${cords.length.toLocaleString('en-US')} drops are`;
  return (
    <>
      <Notice kind="note" text={`${count} longer than the longest cord in stock, and listed at their own length.`} />
      <details>
        <summary>Drops that no stock length reaches</summary>
        <FindingList findings={cords.slice(0, ROWS_SHOWN)} units={units} />
        {cords.length > ROWS_SHOWN && (
          <p class="soft">{`The first ${ROWS_SHOWN} of ${cords.length.toLocaleString('en-US')}: choose a level for others.`}</p>
        )}
      </details>
    </>
  );
}

function Strips({ strips, units, ordering }: OrderPageProps) {
  if (strips.length === 0) return null;
  const closure = ordering?.closure ?? null;
  return (
    <Part title="Strips that close the slot" id="strips">
      <details>
        <summary>How the strips are cut</summary>
        <DataTable
          caption="Open lengths between tap-off boxes, fittings and ends"
          {...(strips.length > ROWS_SHOWN ? { remark: `the ${ROWS_SHOWN} longest of ${strips.length} lengths` } : {})}
          rows={strips.slice(0, ROWS_SHOWN)}
          keyOf={({ length }) => String(length)}
          columns={[
            { head: 'Length', kind: 'number', cell: ({ length }) => formatLength(length, units) },
            { head: 'How many', kind: 'number', cell: ({ count }) => sayQuantity(count) },
          ]}
        />
      </details>
      <p class="soft">
        {closure === null
          ? 'No length of strip is stated in the rules, so slot closure is ordered in metres.'
          : `Ordered by level in strips of ${formatLength(closure.stock, units)}, cut by a plan, with ${closure.wastePercent} % waste, rounded up; an opening longer than a strip takes several end to end.`}
      </p>
    </Part>
  );
}

function SpareParts({ spares, units, jobId }: OrderPageProps) {
  const { lines, idle } = spares;
  return (
    <Part title="Spares and waste by rule" id="spares">
      {idle.length > 0 && (
        <Notice
          kind="note"
          text={`Fits nothing that is counted, so nothing is ordered by it: the rule for ${idle.map((rule) => orderLineWords({ ...rule, unit: '' })).join(', ')}.`}
        />
      )}
      <DataTable
        caption="Beyond what the work takes in"
        remark="spares: the greater of the minimum and the percentage, rounded up; the owner’s apart"
        rows={lines.map((line, index) => ({ line, index }))}
        keyOf={({ index }) => String(index)}
        none={<p class="soft">No rule for spares is stated: nothing is ordered beyond what is counted.</p>}
        columns={[
          { head: 'Item', kind: 'name', cell: ({ line }) => orderLineWords(line) },
          {
            head: 'Length',
            kind: 'number',
            cell: ({ line }) => (line.length === null ? '' : formatLength(line.length, units)),
          },
          { head: 'Busway type', cell: ({ line }) => line.type ?? '' },
          { head: 'Taken in', kind: 'number', cell: ({ line }) => sayQuantity(line.needed) },
          {
            head: 'Waste',
            kind: 'number',
            cell: ({ line }) => `${sayQuantity(line.waste)} (${line.rule.wastePercent} %)`,
          },
          {
            head: 'Spares',
            kind: 'number',
            cell: ({ line }) => `${sayQuantity(line.spare)} (${line.rule.percent} %, at least ${line.rule.minimum})`,
          },
          { head: 'For the owner', kind: 'number', cell: ({ line }) => sayQuantity(line.owner) },
          { head: 'Unit', cell: ({ line }) => line.unit },
        ]}
      />
      <p class="soft">
        Spares stand in the order list and, priced, in a line of the bid of their own; takeoff and hours hold none.{' '}
        <a href={`/jobs/${jobId}/takeoff`}>Back to the takeoff</a>
      </p>
    </Part>
  );
}

function Tools({ tools, toolsStated, manned }: OrderPageProps) {
  return (
    <Part title="Tools by crew" id="tools">
      {!toolsStated && (
        <Notice
          kind="note"
          text="Nobody has stated the crews’ tools yet. This is a suggestion: check it and save it with the rules."
        />
      )}
      <DataTable
        caption="Tools"
        remark={
          manned
            ? 'crews as the crew plan has them, unless given by hand'
            : 'no crew plan: crews have to be given by hand'
        }
        rows={tools.map((tool, index) => ({ tool, index }))}
        keyOf={({ index }) => String(index)}
        none={<p class="soft">No tools are listed.</p>}
        columns={[
          { head: 'Tool', kind: 'name', cell: ({ tool }) => tool.tool },
          { head: 'For a crew', kind: 'number', cell: ({ tool }) => tool.perCrew },
          {
            head: 'Crews',
            cell: ({ tool }) => sayCrews(tool),
          },
          { head: 'In all', kind: 'number', cell: ({ tool }) => tool.quantity ?? 'not known' },
          { head: 'Note', cell: ({ tool }) => tool.note ?? '' },
        ]}
      />
    </Part>
  );
}

function sayCrews({ crews, crewCount, crewNames, activity }: ToolLine): string {
  const work = activity === null ? 'every crew' : `work: ${activityWord(activity)}`;
  if (crews !== null) return `${crews} by hand (${work})`;
  if (crewCount === null) return `no crew plan (${work})`;
  return crewCount === 0 ? `none of the plan (${work})` : `${crewCount}: ${crewNames.join(', ')}`;
}

function sayLeftOut(runs: readonly string[]): string {
  const named = runs.slice(0, 8).join(', ');
  const more = runs.length > 8 ? ` and ${runs.length - 8} more` : '';
  return `Not in the list, because no sections can be laid: ${named}${more}. The checks on each run’s page say why.`;
}
