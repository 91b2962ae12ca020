import type { JSX } from 'preact';
import { DataTable } from './data-table.tsx';

/** One cell of a pasted or uploaded list that must be put right. */
export interface RowFault {
  readonly row: number;
  readonly column: string;
  /** As typed. */
  readonly value: string;
  /** What is wrong and what to do. */
  readonly remedy: string;
}

/** Every faulty cell of a list at once, in the order of its rows. */
export function FaultList({ faults, caption }: { faults: readonly RowFault[]; caption: string }): JSX.Element {
  return (
    <DataTable
      caption={caption}
      rows={faults}
      keyOf={(fault) => `${fault.row}-${fault.column}`}
      columns={[
        { head: 'Row', kind: 'number', cell: (fault) => fault.row },
        { head: 'Column', cell: (fault) => fault.column },
        {
          head: 'Written there',
          cell: (fault) => (fault.value === '' ? <span class="soft">nothing</span> : fault.value),
        },
        { head: 'What to do', cell: (fault) => fault.remedy },
      ]}
    />
  );
}
