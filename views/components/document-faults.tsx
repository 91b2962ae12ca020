import type { JSX } from 'preact';
import type { Fault } from '../../src/document/fault.ts';
import { DataTable } from './data-table.tsx';

const SHOWN = 200;

/** Everything that is wrong with a document, at once: the place, what is wrong, and what to do. */
export function DocumentFaults({ faults }: { faults: readonly Fault[] }): JSX.Element | null {
  if (faults.length === 0) return null;
  const shown = faults.slice(0, SHOWN).map((fault, index) => ({ ...fault, index }));
  return (
    <div class="faults" role="alert" tabIndex={-1}>
      <DataTable
        caption={faults.length === 1 ? 'One thing to put right' : `${faults.length} things to put right`}
        remark={faults.length > SHOWN ? `the first ${SHOWN} are listed; nothing was written` : 'nothing was written'}
        rows={shown}
        keyOf={(fault) => String(fault.index)}
        columns={[
          {
            head: 'Place',
            kind: 'name',
            cell: (fault) => (fault.path === '' ? <span class="soft">the whole</span> : fault.path),
          },
          { head: 'What is wrong', cell: (fault) => fault.message },
          { head: 'What to do', cell: (fault) => fault.remedy },
        ]}
      />
    </div>
  );
}
