import type { JSX } from 'preact';
import type { BookChange } from '../../../src/document/labour-book-sheet/book-changes.ts';
import type { Totals } from '../../../src/domain/beside/totals.ts';
import { Button, ButtonLink } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { Form } from '../../components/form.tsx';
import { InventedNotice } from '../../components/invented-notice.tsx';
import { TotalsBeside } from '../../components/totals-beside.tsx';
import { activityWord } from '../../words/activities.ts';

export interface UpgradeProps {
  readonly changes: readonly BookChange[];
  readonly base: Totals;
  readonly changed: Totals;
  readonly currency: string;
  /** Versions, as they stand over the columns; null: the job has no book yet. */
  readonly from: string | null;
  readonly to: string;
  readonly action: string;
  readonly csrf: string;
  /** Of the job's own book, so that nobody's newer one is written over. */
  readonly version: number;
  /** Carried along, so that exactly what was shown is taken. */
  readonly text?: string;
  readonly leaveHref: string;
}

const SHOWN = 400;

/** What another labour book changes in this job, value by value and in all; taken only when asked for. */
export function Upgrade(props: UpgradeProps): JSX.Element {
  const { changes, from, to, text } = props;
  const was = from === null ? 'No book' : `Now: ${from}`;
  return (
    <>
      <InventedNotice version={to} />
      <TotalsBeside {...props} caption="What the job comes to" heads={[was, `With ${to}`]} />
      <DataTable
        caption={changes.length === 1 ? 'One value changes' : `${changes.length} values change`}
        {...(changes.length > SHOWN ? { remark: `the first ${SHOWN} are listed` } : {})}
        rows={changes.slice(0, SHOWN).map((change, index) => ({ ...change, index }))}
        keyOf={({ index }) => String(index)}
        none={<p>No value differs: the job’s book says the same already.</p>}
        narrow="scrolls"
        columns={[
          { head: 'What', kind: 'name', cell: bookChangeWords },
          { head: was, kind: 'number', cell: ({ before }) => before || <span class="soft">not there</span> },
          { head: `With ${to}`, kind: 'number', cell: ({ after }) => after || <span class="soft">not there</span> },
        ]}
      />
      <Form action={props.action} csrf={props.csrf} version={props.version}>
        {text !== undefined && <input type="hidden" name="text" value={text} />}
        <div class="row">
          <Button kind="lead" {...(changes.length === 0 ? { barred: 'Nothing would change.' } : {})}>
            Take {to} into this job
          </Button>
          <ButtonLink href={props.leaveHref} kind="plain">
            Leave it
          </ButtonLink>
        </div>
        <p class="hint">
          One change of the design, which Undo takes back. Frozen bids keep the book they were frozen with.
        </p>
      </Form>
    </>
  );
}

/** One changed value in words. `make up joints: likely hours`, `hang sections up to 5'-0": low hours`. */
export function bookChangeWords({ part, name, length, column }: BookChange): string {
  const at = length === '' ? '' : part === 'over height' ? ` over ${length}` : ` up to ${length}`;
  const hours = column === 'low' || column === 'likely' || column === 'high';
  const cell = hours ? `: ${column} hours` : column === 'value' ? '' : `: ${column}`;
  const thing = part === 'activity' || part === 'by length' ? activityWord(name as 'joint') : name;
  const group = part === 'crew' ? 'crew, ' : part === 'book' || part === 'over height' || hours ? '' : `${part}, `;
  return `${part === 'activity' ? '' : group}${thing}${at}${cell}`;
}
