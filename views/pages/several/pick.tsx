import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { fromMm } from '../../../src/domain/units/length.ts';
import { Button } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { type Option, SelectField, TextField } from '../../components/field.tsx';
import { Filter } from '../../components/filter.tsx';
import { Form } from '../../components/form.tsx';
import { LengthText } from '../../components/length-text.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';

export interface PickedRun {
  readonly key: string;
  readonly level: string;
  readonly type: string;
  readonly area: string | null;
  readonly side: string | null;
  readonly lengthMm: number;
  readonly stops: number;
  readonly revision: number;
  readonly changed: boolean;
}

export interface PickPageProps {
  readonly path: string;
  /** The address with its filter, which the form is sent to. */
  readonly action: string;
  readonly csrf: string;
  readonly units: UnitSystem;
  readonly runs: readonly PickedRun[];
  readonly total: number;
  readonly pager: PagerProps | null;
  readonly filter: { readonly level: string; readonly type: string; readonly side: string; readonly q: string };
  readonly levels: readonly Option[];
  readonly types: readonly Option[];
}

/** Runs to tick, and what to do with them together. */
export function PickPage(props: PickPageProps): JSX.Element {
  const { path, filter, levels, types, runs, total, units, pager, action, csrf } = props;
  const isFiltered = Object.values(filter).some((value) => value !== '');
  return (
    <>
      <Filter action={path} clear={isFiltered ? path : null} label="Which runs">
        <SelectField name="level" label="Level" value={filter.level} options={[ANY, ...levels]} />
        <SelectField name="type" label="Busway type" value={filter.type} options={[ANY, ...types]} />
        <SelectField name="side" label="Feed side" value={filter.side} options={[ANY, ...SIDES]} />
        <TextField name="q" label="Name holds" value={filter.q} />
      </Filter>
      <Form action={action} csrf={csrf}>
        <DataTable
          caption="Runs"
          remark={String(total)}
          rows={runs}
          keyOf={(run) => run.key}
          narrow="scrolls"
          none={<EmptyState text={isFiltered ? 'No run is like that.' : 'No run yet.'} />}
          columns={[
            { head: 'Run', kind: 'name', cell: (run) => <Tick run={run} /> },
            { head: 'Level', cell: (run) => run.level },
            { head: 'Side', cell: (run) => (run.side === null ? '' : `${run.side}-side`) },
            { head: 'Busway type', cell: (run) => run.type },
            { head: 'Room or area', cell: (run) => run.area ?? '' },
            {
              head: 'Length',
              kind: 'number',
              cell: (run) => <LengthText length={fromMm(run.lengthMm)} units={units} />,
            },
            { head: 'Stops', kind: 'number', cell: (run) => (run.stops === 0 ? '' : run.stops) },
            { head: 'With the floor', cell: sayRevision },
          ]}
        />
        {pager !== null && <Pager {...pager} />}
        {runs.length > 0 && (
          <>
            <label class="tick">
              <input type="checkbox" name="all" value="yes" />
              <span>
                All {total} {isFiltered ? 'that the filter shows' : 'runs of the job'}
              </span>
            </label>
            <div class="row">
              <Button name="do" value="copies" kind="lead">
                Copy them
              </Button>
              <Button name="do" value="partners">
                Make their partners
              </Button>
              <Button name="do" value="changes">
                Change them together
              </Button>
            </div>
          </>
        )}
      </Form>
    </>
  );
}

const ANY = { value: '', word: 'any' };
const SIDES = [
  { value: 'A', word: 'A-side' },
  { value: 'B', word: 'B-side' },
];

function Tick({ run }: { run: PickedRun }) {
  return (
    <label class="tick">
      <input type="checkbox" name="tick" value={run.key} />
      <span>{run.key}</span>
    </label>
  );
}

function sayRevision({ revision, changed }: PickedRun): string {
  if (revision === 0) return 'not yet';
  return changed ? `rev. ${revision}, changed since` : `rev. ${revision}`;
}
