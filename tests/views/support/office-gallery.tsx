import type { JSX } from 'preact';
import { RUN_STATUSES } from '../../../src/domain/quality/run-status.ts';
import { FOOT } from '../../../src/domain/units/length.ts';
import { formatHours } from '../../../src/domain/units/quantities.ts';
import { Button, ButtonLink } from '../../../views/components/button.tsx';
import { Caution } from '../../../views/components/caution.tsx';
import { Confirm } from '../../../views/components/confirm.tsx';
import { DataTable } from '../../../views/components/data-table.tsx';
import { DefinitionList } from '../../../views/components/definition-list.tsx';
import { Drawing } from '../../../views/components/drawing.tsx';
import { EmptyState } from '../../../views/components/empty-state.tsx';
import { FaultList } from '../../../views/components/fault-list.tsx';
import {
  ChoiceField,
  FileField,
  SelectField,
  TextArea,
  TextField,
  TickField,
} from '../../../views/components/field.tsx';
import { Filter } from '../../../views/components/filter.tsx';
import { FindingList } from '../../../views/components/finding-list.tsx';
import { Form } from '../../../views/components/form.tsx';
import { FormFaults } from '../../../views/components/form-faults.tsx';
import { LengthText } from '../../../views/components/length-text.tsx';
import { Mark, MarkLegend } from '../../../views/components/mark.tsx';
import { Meter } from '../../../views/components/meter.tsx';
import { Money } from '../../../views/components/money.tsx';
import { Notice } from '../../../views/components/notice.tsx';
import { Pager } from '../../../views/components/pager.tsx';
import { Part } from '../../../views/components/part.tsx';
import { RunStrip } from '../../../views/components/run-strip.tsx';
import { StatusWord } from '../../../views/components/status-word.tsx';
import { Time } from '../../../views/components/time.tsx';
import { Working } from '../../../views/components/working.tsx';
import { FloorPlan } from '../../../views/drawings/floor-plan.tsx';
import { RangeBar } from '../../../views/drawings/range-bar.tsx';
import { cornerRun, crowdedRun, denseRun, floor, standardRun } from './runs.ts';

interface Row {
  readonly id: string;
  readonly area: string;
  readonly feet: number;
  readonly hours: number;
  readonly status: (typeof RUN_STATUSES)[number];
  readonly price: number | null;
}

const ROWS: readonly Row[] = [
  { id: 'L2-R01-A', area: 'hall 2', feet: 70, hours: 44.32, status: 'planned', price: 2_631_456 },
  { id: 'L2-R01-B', area: 'hall 2', feet: 70, hours: 44.32, status: 'in-installation', price: 2_631_456 },
  { id: 'L2-R02-A', area: 'hall 2', feet: 97, hours: 61.08, status: 'mechanically-complete', price: null },
  { id: 'L2-R03-A', area: 'battery room', feet: 70.5, hours: 45, status: 'tested', price: 2_655_100 },
];

export function OfficeGallery(): JSX.Element {
  return (
    <>
      <Part title="Strip, partly built" tools={<ButtonLink href="#x">Print labels</ButtonLink>}>
        <RunStrip {...standardRun()} units="ft-in" />
      </Part>
      <Part title="Strip with a corner, a wall and blocked zones">
        <RunStrip {...cornerRun()} units="ft-in" idPrefix="corner" />
      </Part>
      <Part title="Strip of a crowded run, metric">
        <RunStrip {...crowdedRun()} units="metric" />
      </Part>
      <Part title="Strip of a long, dense run">
        <RunStrip {...denseRun()} units="ft-in" />
      </Part>
      <Part title="Level plan">
        <Drawing label="Plan of level 2">
          <FloorPlan {...floor()} ink="screen" units="ft-in" />
        </Drawing>
      </Part>
      <Part title="Range">
        <Drawing label="Range of the hours">
          <RangeBar
            range={{ likely: 2424, p10: 2391.4, p50: 2548.2, p80: 2690.7, p90: 2768.3 }}
            of="Hours of the job"
            write={formatHours}
            ink="screen"
          />
        </Drawing>
      </Part>
      <Part title="Marks and states">
        <MarkLegend of="piece" />
        <MarkLegend of="joint" />
        <MarkLegend of="tap" />
        <ul class="legend">
          {RUN_STATUSES.map((status) => (
            <li key={status}>
              <StatusWord status={status} />
            </li>
          ))}
        </ul>
        <Meter done={44} planned={110} of="joints" />
        <Meter done={125} planned={110} of="h" />
      </Part>
      <Part title="Runs of level 2" tools={<ButtonLink href="#new">New run</ButtonLink>}>
        <Filter action="#" clear="#all" label="Which runs">
          <TextField name="q" label="Run or area" value="R0" />
          <SelectField
            name="state"
            label="State"
            value="all"
            options={[
              { value: 'all', word: 'all' },
              { value: 'planned', word: 'planned' },
            ]}
          />
        </Filter>
        <DataTable
          caption="Runs"
          remark="4 of 48"
          rows={ROWS}
          keyOf={(row) => row.id}
          columns={[
            {
              head: 'Run',
              kind: 'name',
              cell: (row) => <a href={`#${row.id}`}>{row.id}</a>,
              sort: { href: '#s', now: 'up' },
            },
            { head: 'Area', cell: (row) => row.area, sort: { href: '#s', now: 'no' } },
            { head: 'Length', kind: 'number', cell: (row) => <LengthText length={row.feet * FOOT} units="ft-in" /> },
            { head: 'Status', cell: (row) => <StatusWord status={row.status} /> },
            { head: 'Pieces', cell: () => <Mark state="hung" /> },
            {
              head: 'Price',
              kind: 'number',
              cell: (row) => <Money minor={row.price} currency="USD" />,
              foot: '$79,180.12',
            },
            {
              head: 'Hours',
              kind: 'number',
              cell: (row) => (
                <Working
                  figure={row.hours.toFixed(2)}
                  of={`hours of ${row.id}`}
                  formula="hours = quantity × base hours × condition factors × learning × (1 + non-productive)"
                  filledIn="2.40 = 4 × 0.60 × 1.00 × 1.000 × 1.00"
                  inputs={[
                    { name: 'joints', value: '4', source: 'layout of the run, revision 3' },
                    { name: 'base hours', value: '0.60 h each', source: 'labour book demo-1, invented' },
                  ]}
                  source="Labour book of the company; see Hours."
                />
              ),
              foot: '194.72',
            },
          ]}
        />
        <Pager first={1} last={4} total={48} things="runs" before={null} after="#next" />
      </Part>
      <Part title="Checks">
        <FindingList
          units="ft-in"
          runHref={(run) => `#${run}`}
          findings={[
            {
              rule: 'tap.joint-clear',
              severity: 'stop',
              run: 'L2-R03-A',
              at: 40.25 * FOOT,
              message:
                'T12 is 0\'-3" from joint J03 and needs 1\'-3". The nearest legal places are 38\'-9" and 41\'-3"; the cord grows by 1\'-6".',
              source: 'sheet demo-250A, rev. 1 (invented)',
            },
            {
              rule: 'limit.unknown',
              severity: 'warning',
              run: null,
              at: null,
              message:
                'The sheet states no capacity for the hangers, so their load is unknown, not in order. Enter the evaluated value for this slab.',
              source: 'NEC 368.30; the local code and the maker’s sheet decide',
            },
            {
              rule: 'price.absent',
              severity: 'note',
              run: 'L2-R02-A',
              at: null,
              message: 'Elbows have no price and count as nought.',
              source: 'busway type',
            },
          ]}
        />
      </Part>
      <Part title="A form that was refused">
        <FormFaults faults={[{ field: 'f-length', label: 'Length of leg 1', message: '21,336 ft is 4 miles.' }]} />
        <Form action="#" csrf="x" submissionId="s1" version={3}>
          <TextField name="label" label="Run" value="L2-R03-A" need="required" hint="As it is painted on the run." />
          <TextField
            name="length"
            kind="length"
            label="Length of leg 1"
            value="21336"
            hint={'Like 12\'-6 1/2", 12.5 ft or 3810 mm.'}
            fault="21,336 ft is 4 miles. 21,336 mm is 70.0 ft: if you meant millimetres, write 21336 mm."
          />
          <TextField name="device" kind="number" unit="A" label="Device at the feed" value="225" need="optional" />
          <ChoiceField
            name="side"
            label="Conductor side, looking away from the feed"
            value="left"
            options={[
              { value: 'left', word: 'left' },
              { value: 'right', word: 'right' },
            ]}
          />
          <TickField name="measured" label="Measured on site" ticked="yes" />
          <TextArea
            name="taps"
            label="Tap-offs"
            kind="sheet"
            value={'T1\t1.75\tL1\nT2\t5.25\tL2'}
            hint="Paste the rows of a spreadsheet."
          />
          <FileField name="photo" label="Certificate" need="optional" />
          <div class="row">
            <Button kind="lead">Save the run</Button>
            <Button>Save and add another</Button>
            <Button barred="Two stops bar it.">Release</Button>
            <Button kind="plain">Leave it</Button>
          </div>
        </Form>
        <Confirm
          ask="Remove run"
          question="The run leaves the design. It has no records yet; you can put it back from the audit trail."
          answer="Remove L2-R03-A"
          action="#"
          csrf="x"
        />
      </Part>
      <Part title="A list that was refused">
        <FaultList
          caption="2 of 41 rows need attention"
          faults={[
            { row: 3, column: 'at', value: '10.6', remedy: '10.6 ft is 10\'-7 3/16". Did you mean 10\'-6"?' },
            { row: 17, column: 'phases', value: '', remedy: 'Say L1, L2, L3, L1-L2, L2-L3, L3-L1 or L1-L2-L3.' },
          ]}
        />
      </Part>
      <Part title="Odds and ends">
        <Notice kind="stop" text="Somebody changed this run 4 minutes ago; nothing of yours was written." />
        <Notice
          kind="note"
          text="Figures are as of the last release."
          undo={<Button kind="plain">Read again</Button>}
        />
        <Caution />
        <EmptyState text="No test was recorded on this run yet.">
          <ButtonLink href="#t" kind="lead">
            Record the first
          </ButtonLink>
        </EmptyState>
        <DefinitionList
          entries={[
            { term: 'Feed', value: 'end feed from PDU-3' },
            { term: 'Accepted', value: <Time at={new Date('2026-05-12T20:40:00Z')} zone="America/Chicago" /> },
            { term: 'Rod', value: <LengthText length={null} units="ft-in" /> },
          ]}
        />
      </Part>
    </>
  );
}
