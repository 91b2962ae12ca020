import type { JSX } from 'preact';
import type { Finding } from '../../src/domain/finding.ts';
import type { BuswayType, UnitSystem } from '../../src/domain/model.ts';
import type { RodPlan } from '../../src/domain/takeoff/plan-rods.ts';
import type { TakeoffLine } from '../../src/domain/takeoff/result.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { shownQuantity } from '../../src/domain/units/quantities.ts';
import { ButtonLink } from '../components/button.tsx';
import { type Column, DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { SelectField } from '../components/field.tsx';
import { Filter } from '../components/filter.tsx';
import { FindingList } from '../components/finding-list.tsx';
import { Notice } from '../components/notice.tsx';
import { Pager, type PagerProps } from '../components/pager.tsx';
import { Part } from '../components/part.tsx';
import { rodPlanWords } from '../words/rod-plan.ts';
import { sheetWord, takeoffLineWords } from '../words/takeoff-items.ts';
import { CountedFrom, type MarksOf } from './takeoff/counted-from.tsx';

export type SummedBy = 'job' | 'level' | 'run';
export interface SummedLine extends TakeoffLine {
  readonly parts: readonly TakeoffLine[];
}

export interface TakeoffPageProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly by: SummedBy;
  readonly level: string;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly lines: readonly SummedLine[];
  readonly total: number;
  readonly pager: PagerProps | null;
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly rods: readonly RodPlan[];
  readonly leftOut: readonly string[];
  /** What cannot be counted as it stands. */
  readonly findings: readonly Finding[];
  readonly marksOf: MarksOf;
  /** Where the places of a line stand in pages. */
  readonly placesHref: (line: TakeoffLine) => string;
}

/** What to order, each line with the places it was counted from. */
export function TakeoffPage(props: TakeoffPageProps): JSX.Element {
  const { jobId, by, level, levels, lines, total, pager, leftOut } = props;
  const base = `/jobs/${jobId}/takeoff`;
  const isChosen = by !== 'job' || level !== '';
  return (
    <>
      <Filter action={base} clear={isChosen ? base : null} label="How the takeoff is added up">
        <SelectField
          name="by"
          label="Added up"
          value={by}
          options={[
            { value: 'job', word: 'over the job' },
            { value: 'level', word: 'by level' },
            { value: 'run', word: 'by run' },
          ]}
        />
        <SelectField
          name="level"
          label="Of"
          value={level}
          options={[{ value: '', word: 'all levels' }, ...levels.map((one) => ({ value: one.id, word: one.name }))]}
        />
      </Filter>
      {leftOut.length > 0 && <Notice kind="stop" text={sayLeftOut(leftOut)} />}
      <DataTable
        caption="Order lines"
        remark={`${total}; open a quantity for the places it was counted from`}
        rows={lines.map((line, index) => ({ line, index }))}
        keyOf={(row) => String(row.index)}
        none={<EmptyState text="Nothing is counted yet: runs with a sound layout come first." />}
        columns={columnsOf(props)}
      />
      {pager !== null && <Pager {...pager} />}
      <Doubts {...props} />
      <RodPlans {...props} />
      <p class="soft">
        Counted from the layouts as they stand, without spares or waste: those stand in the order list, by rule. Check
        kinds and hands against the approved drawing and the maker’s sheet before ordering.
      </p>
    </>
  );
}

/** At the head of the page. */
export function TakeoffTools(props: { jobId: string; href: string; workbook: string; money: boolean }): JSX.Element {
  const { jobId, href, workbook, money } = props;
  const base = `/jobs/${jobId}/takeoff`;
  return (
    <>
      <ButtonLink href={`${base}/order`}>Order list</ButtonLink>
      {money && <ButtonLink href={`${base}/by-hand`}>Lines by hand</ButtonLink>}
      <ButtonLink href={href}>As CSV</ButtonLink>
      <ButtonLink href={workbook}>As a workbook</ButtonLink>
      <ButtonLink href={`${base}.pdf`}>As PDF</ButtonLink>
    </>
  );
}

interface Row {
  readonly line: SummedLine;
  readonly index: number;
}

function columnsOf({ units, by, levels, types, marksOf, placesHref }: TakeoffPageProps): Column<Row>[] {
  const levelName = (id: string | null) => levels.find((level) => level.id === id)?.name ?? 'whole job';
  return [
    ...(by === 'job' ? [] : [{ head: 'Level', cell: ({ line }: Row) => levelName(line.level) }]),
    ...(by === 'run' ? [{ head: 'Run', cell: ({ line }: Row) => line.run ?? '' }] : []),
    {
      head: 'Item',
      kind: 'name',
      cell: ({ line }) => {
        const own = sheetWord(line.item, types.get(line.type ?? ''));
        return (
          <>
            {takeoffLineWords(line)}
            {own !== null && <span class="soft"> ({own})</span>}
          </>
        );
      },
    },
    {
      head: 'Length',
      kind: 'number',
      cell: ({ line }) => (line.length === null ? '' : formatLength(line.length, units)),
    },
    { head: 'Busway type', cell: ({ line }) => line.type ?? '' },
    {
      head: 'Quantity',
      kind: 'number',
      cell: ({ line }) => (
        <CountedFrom
          words={takeoffLineWords(line)}
          quantity={shownQuantity(line, units).quantity}
          parts={line.parts}
          units={units}
          marksOf={marksOf}
          href={placesHref(line)}
        />
      ),
    },
    { head: 'Unit', cell: ({ line }) => shownQuantity(line, units).unit },
  ];
}

const FINDINGS_SHOWN = 50;

function Doubts({ findings, units }: TakeoffPageProps) {
  if (findings.length === 0) return null;
  return (
    <Part title="What the takeoff cannot count as it stands" id="doubts">
      <details>
        <summary>{findings.length === 1 ? 'One remark' : `${findings.length.toLocaleString('en-US')} remarks`}</summary>
        <FindingList findings={findings.slice(0, FINDINGS_SHOWN)} units={units} />
        {findings.length > FINDINGS_SHOWN && <p class="soft">The first {FINDINGS_SHOWN}; the figures hold them all.</p>}
      </details>
    </Part>
  );
}

function RodPlans({ rods, units, level }: TakeoffPageProps) {
  if (rods.length === 0 || level !== '') return null;
  const rows = rods.flatMap(({ rod, plan }) =>
    plan.patterns.map((pattern, index) => ({ rod, plan, pattern, key: `${rod} ${plan.stock} ${index}` })),
  );
  return (
    <Part title="How the rods are cut" id="rods">
      <DataTable
        caption="Cutting plan of the whole job"
        remark={rods.map((plan) => rodPlanWords(plan, units)).join(' ')}
        rows={rows}
        keyOf={(row) => row.key}
        columns={[
          { head: 'Rod', kind: 'name', cell: ({ rod }) => rod ?? 'not stated' },
          { head: 'Stock', kind: 'number', cell: ({ plan }) => formatLength(plan.stock, units) },
          { head: 'Sticks', kind: 'number', cell: ({ pattern }) => pattern.times },
          {
            head: 'Cut into',
            cell: ({ pattern }) =>
              pattern.pieces.map((piece) => `${piece.count} × ${formatLength(piece.length, units)}`).join(' + '),
          },
        ]}
      />
    </Part>
  );
}

function sayLeftOut(runs: readonly string[]): string {
  const named = runs.slice(0, 8).join(', ');
  const more = runs.length > 8 ? ` and ${runs.length - 8} more` : '';
  return `Not counted, because no sections can be laid: ${named}${more}. The checks on each run’s page say why.`;
}
