import type { JSX } from 'preact';
import type { ThingBeside } from '../../src/domain/beside/things-beside.ts';
import type { Totals } from '../../src/domain/beside/totals.ts';
import { besideEachOther, type Figure } from '../../src/domain/bid/compare-bids.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { Button, ButtonLink } from '../components/button.tsx';
import { DataTable } from '../components/data-table.tsx';
import { type FormFault, FormFaults } from '../components/form-faults.tsx';
import { InventedNotice } from '../components/invented-notice.tsx';
import { Notice } from '../components/notice.tsx';
import { Part } from '../components/part.tsx';
import { TotalsBeside } from '../components/totals-beside.tsx';
import { activityWord } from '../words/activities.ts';
import { takeoffLineWords } from '../words/takeoff-items.ts';
import { WhatIfFields, type WhatIfFieldsProps } from './what-if/what-if-fields.tsx';

export interface WhatIfPageProps extends WhatIfFieldsProps {
  readonly jobId: string;
  readonly currency: string;
  readonly book: string | null;
  readonly summary: readonly FormFault[];
  /** null while nothing is asked, and where it was refused. */
  readonly answer: { readonly base: Totals; readonly changed: Totals; readonly things: readonly ThingBeside[] } | null;
}

const HEADS = ['As it stands', 'What if'] as const;
const SHOWN = 200;

/** A change beside the job as it stands. Nothing is written: the address carries the change. */
export function WhatIfPage(props: WhatIfPageProps): JSX.Element {
  const { jobId, answer, summary, book } = props;
  const path = `/jobs/${jobId}/what-if`;
  return (
    <>
      <InventedNotice version={book} />
      <FormFaults faults={summary} />
      {answer !== null && <Answer {...props} answer={answer} />}
      <Part title="What if …" id="ask">
        <p class="hint">
          Whatever stays empty is as it is in the job. Nothing is written, by this page or by its address, which can be
          kept and sent to others of the office.
        </p>
        <form class="form" method="get" action={path}>
          <WhatIfFields {...props} />
          <div class="row">
            <Button kind="lead">Show it beside the job</Button>
            <ButtonLink href={path} kind="plain">
              Clear
            </ButtonLink>
          </div>
        </form>
      </Part>
    </>
  );
}

function Answer({
  answer,
  currency,
  levels,
  units,
}: WhatIfPageProps & { answer: NonNullable<WhatIfPageProps['answer']> }) {
  const { base, changed, things } = answer;
  const nameOf = new Map(levels.map(({ value, word }) => [value, word]));
  const lost = changed.leftOut.filter((run) => !base.leftOut.includes(run));
  return (
    <Part title="Beside the job as it stands" id="answer">
      <Notice kind="note" text="The job is unchanged: the second column is worked on a copy and kept nowhere." />
      {lost.length > 0 && (
        <Notice
          kind="stop"
          text={`No sections can be laid in ${lost.slice(0, 8).join(', ')}${lost.length > 8 ? ` and ${lost.length - 8} more` : ''} then, so they count nowhere in the second column.`}
        />
      )}
      {changed.unpriced > base.unpriced && (
        <Notice
          kind="stop"
          text={`${changed.unpriced} kinds of things have no price then, ${base.unpriced} as it stands: the material of the second column is not complete.`}
        />
      )}
      {(base.incomplete || changed.incomplete) && (
        <Notice kind="note" text="The bid is not complete: both prices lack what the bid’s page names." />
      )}
      <TotalsBeside base={base} changed={changed} currency={currency} heads={HEADS} caption="What the job comes to" />
      <HoursBeside
        caption="Labour hours by activity"
        before={base.byActivity.map(({ activity, hours }) => ({ name: activityWord(activity), value: hours }))}
        after={changed.byActivity.map(({ activity, hours }) => ({ name: activityWord(activity), value: hours }))}
      />
      <HoursBeside
        caption="Labour hours by level"
        before={base.byLevel.map(({ level, hours }) => ({ name: nameOf.get(level) ?? level, value: hours }))}
        after={changed.byLevel.map(({ level, hours }) => ({ name: nameOf.get(level) ?? level, value: hours }))}
      />
      <Things things={things} units={units} />
    </Part>
  );
}

function HoursBeside(props: { caption: string; before: readonly Figure[]; after: readonly Figure[] }) {
  const rows = besideEachOther(props.before, props.after);
  if (rows.length === 0) return null;
  const write = (hours: number | null) => (hours ?? 0).toFixed(1);
  const sum = (of: 'before' | 'after') => rows.reduce((total, row) => total + (row[of] ?? 0), 0);
  const signed = (change: number) =>
    Math.abs(change) < 0.05 ? <span class="soft">none</span> : `${change > 0 ? '+' : ''}${change.toFixed(1)}`;
  return (
    <DataTable
      caption={props.caption}
      rows={rows}
      keyOf={({ name }) => name}
      narrow="scrolls"
      columns={[
        { head: 'Of', kind: 'name', cell: ({ name }) => name, foot: 'Sum' },
        { head: HEADS[0], kind: 'number', cell: ({ before }) => write(before), foot: write(sum('before')) },
        { head: HEADS[1], kind: 'number', cell: ({ after }) => write(after), foot: write(sum('after')) },
        {
          head: 'Difference',
          kind: 'number',
          cell: ({ change }) => signed(change),
          foot: signed(sum('after') - sum('before')),
        },
      ]}
    />
  );
}

function Things({ things, units }: { things: readonly ThingBeside[]; units: 'ft-in' | 'metric' }) {
  const figure = (value: number) => String(Number(value.toFixed(3)));
  return (
    <DataTable
      caption="Things in another number"
      {...(things.length > SHOWN ? { remark: `the first ${SHOWN} of ${things.length}` } : {})}
      rows={things.slice(0, SHOWN).map((one, index) => ({ ...one, index }))}
      keyOf={({ index }) => String(index)}
      none={<p class="soft">The takeoff is the same.</p>}
      narrow="scrolls"
      columns={[
        {
          head: 'Thing',
          kind: 'name',
          cell: ({ thing }) =>
            [takeoffLineWords(thing), thing.length === null ? '' : formatLength(thing.length, units), thing.type ?? '']
              .filter(Boolean)
              .join(', '),
        },
        { head: HEADS[0], kind: 'number', cell: ({ before }) => figure(before) },
        { head: HEADS[1], kind: 'number', cell: ({ after }) => figure(after) },
        {
          head: 'Difference',
          kind: 'number',
          cell: ({ before, after }) => `${after > before ? '+' : ''}${figure(after - before)}`,
        },
      ]}
    />
  );
}
