import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { fromMm } from '../../../src/domain/units/length.ts';
import { Button } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { FaultList } from '../../components/fault-list.tsx';
import { Form } from '../../components/form.tsx';
import type { ListFault } from '../lists.tsx';

export interface ListPreviewProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly units: UnitSystem;
  readonly of: 'runs' | 'taps';
  /** Carried along, so that exactly what was shown is made. */
  readonly text: string;
  readonly submissionId: string;
  readonly total: number;
  readonly levels: readonly { readonly level: string; readonly count: number; readonly lengthMm?: number }[];
  /** The first few, cell by cell. */
  readonly first: readonly (readonly { readonly head: string; readonly text: string }[])[];
  readonly questions: readonly ListFault[];
}

const THINGS = { runs: ['run', 'runs'], taps: ['tap-off', 'tap-offs'] } as const;

/** What the list will make, before it does. */
export function ListPreview(props: ListPreviewProps): JSX.Element {
  const { jobId, csrf, units, of, text, submissionId, total, levels, first, questions } = props;
  const [one, many] = THINGS[of];
  const heads = first[0]?.map((cell) => cell.head) ?? [];
  return (
    <section class="preview stack" aria-label="What the list makes">
      <DataTable
        caption={total === 1 ? `One ${one} will be made` : `${total} ${many} will be made`}
        rows={levels}
        keyOf={(row) => row.level}
        columns={[
          { head: 'Level', kind: 'name', cell: (row) => row.level },
          { head: of === 'runs' ? 'Runs' : 'Tap-offs', kind: 'number', cell: (row) => row.count },
          ...(of === 'runs'
            ? [
                {
                  head: 'Legs, corner to corner',
                  kind: 'number' as const,
                  cell: (row: (typeof levels)[number]) => formatLength(fromMm(row.lengthMm ?? 0), units),
                },
              ]
            : []),
        ]}
      />
      <DataTable
        caption={total > first.length ? `The first ${first.length}` : 'As they were read'}
        rows={first.map((cells, index) => ({ cells, index }))}
        keyOf={(row) => String(row.index)}
        columns={heads.map((head, index) => ({
          head,
          ...(index === 0 ? { kind: 'name' as const } : {}),
          cell: ({ cells }: { cells: (typeof first)[number] }) => cells[index]?.text ?? '',
        }))}
      />
      {questions.length > 0 && (
        <FaultList
          caption="Worth a second look: taken as typed unless you change them below"
          faults={questions.map(({ row, column, value, problem, remedy }) => ({
            row: row ?? 0,
            column: column ?? 'the row',
            value,
            remedy: `${problem} ${remedy}`,
          }))}
        />
      )}
      <Form action={`/jobs/${jobId}/lists/${of}/taken`} csrf={csrf} submissionId={submissionId}>
        <input type="hidden" name="text" value={text} />
        <Button kind="lead">{total === 1 ? `Make one ${one}` : `Make ${total} ${many}`}</Button>
      </Form>
    </section>
  );
}
