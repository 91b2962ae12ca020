import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { fromMm } from '../../../src/domain/units/length.ts';
import { Button } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { Drawing } from '../../components/drawing.tsx';
import { Form } from '../../components/form.tsx';
import { LengthText } from '../../components/length-text.tsx';
import { FloorPlan, type PlanRun } from '../../drawings/floor-plan.tsx';
import { type Carried, CarriedFields } from './carried.tsx';

export interface MadeLine {
  readonly id: string;
  readonly from: string;
  readonly level: string;
  readonly side: string | null;
  readonly supply: string | null;
  readonly taps: number;
  readonly lengthMm: number;
  readonly layoutOk: boolean;
  readonly stops: number;
}

export interface MadePreviewProps {
  readonly action: string;
  readonly csrf: string;
  readonly submissionId: string;
  readonly units: UnitSystem;
  readonly carried: Carried;
  /** Versions of the runs as they are shown, as JSON. */
  readonly seen: string;
  readonly rows: readonly MadeLine[];
  readonly notes: readonly string[];
  /** Runs of the design that change with it, and those of them that the floor has. */
  readonly changed: readonly string[];
  readonly released: readonly string[];
  readonly plan: { readonly level: string; readonly runs: readonly PlanRun[]; readonly more: number } | null;
}

const SHOWN = 100;
export const NEW_MARK = '+ ';

/** The runs that will be made, each by its name, before they are. */
export function MadePreview(props: MadePreviewProps): JSX.Element {
  const { rows, units, notes, changed, released, plan, action, csrf, submissionId, carried, seen } = props;
  const count = rows.length === 1 ? 'One run' : `${rows.length} runs`;
  const first = rows.slice(0, SHOWN);
  return (
    <section class="preview stack" id="preview" aria-label="What will be made">
      <DataTable
        caption={`${count} will be made`}
        {...(first.length < rows.length ? { remark: `the first ${first.length}, laid out as they would be` } : {})}
        rows={first}
        keyOf={(row) => row.id}
        narrow="scrolls"
        columns={[
          { head: 'New run', kind: 'name', cell: (row) => row.id },
          { head: 'From', cell: (row) => row.from },
          { head: 'Level', cell: (row) => row.level },
          { head: 'Side', cell: (row) => (row.side === null ? '' : `${row.side}-side`) },
          { head: 'Supply', cell: (row) => row.supply ?? '' },
          { head: 'Tap-offs', kind: 'number', cell: (row) => row.taps },
          { head: 'Length', kind: 'number', cell: (row) => <LengthText length={fromMm(row.lengthMm)} units={units} /> },
          { head: 'Checks', cell: (row) => <Checks row={row} /> },
        ]}
      />
      {first.length < rows.length && (
        <details>
          <summary>All {rows.length} names</summary>
          <p>{rows.map((row) => row.id).join(', ')}</p>
        </details>
      )}
      {plan !== null && (
        <>
          <Drawing label={`Plan of ${plan.level} with the new runs`}>
            <FloorPlan level={plan.level} runs={plan.runs} units={units} ink="screen" tallest={420} />
          </Drawing>
          <p class="hint">
            Plan of {plan.level}; a + stands before the name of what is new.
            {plan.more > 0 && ` ${plan.more} more runs of the level are not drawn.`}
          </p>
        </>
      )}
      <Notes notes={[...notes, ...changeNotes(changed, released)]} />
      <Form action={action} csrf={csrf} submissionId={submissionId}>
        <CarriedFields {...carried} />
        <input type="hidden" name="seen" value={seen} />
        <Button kind="lead">{rows.length === 1 ? 'Make one run' : `Make ${rows.length} runs`}</Button>
      </Form>
    </section>
  );
}

/** Worth knowing before anything is written. */
export function Notes({ notes }: { notes: readonly string[] }): JSX.Element | null {
  if (notes.length === 0) return null;
  return (
    <ul>
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

export function releasedNote(released: readonly string[]): string[] {
  const [first] = released;
  if (first === undefined) return [];
  const whose = released.length === 1 ? `${first} is` : `${first} and ${released.length - 1} more are`;
  return [`${whose} with the floor: only the draft changes, and the floor keeps what it has until the next release.`];
}

function changeNotes(changed: readonly string[], released: readonly string[]): string[] {
  if (changed.length === 0) return [];
  const whose = changed.length === 1 ? `${changed[0]} will name its partner` : 'These runs will name their partners';
  return [`${whose}, and tap-offs get labels that they share with the partner’s.`, ...releasedNote(released)];
}

function Checks({ row }: { row: MadeLine }) {
  if (row.layoutOk && row.stops === 0) return <>no stop</>;
  return <span class="stop">{row.stops === 1 ? 'one stop' : `${row.stops} stops`}</span>;
}
