import type { JSX } from 'preact';
import { FaultList } from '../../components/fault-list.tsx';
import { TextArea } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import type { SheetFault } from '../run-edit.tsx';
import { entryProps, type Filled } from './fields.ts';

/** The tap-offs as the rows of a spreadsheet. */
export function TapFields(props: Filled & { readonly tapFaults: readonly SheetFault[] }): JSX.Element {
  const { tapFaults } = props;
  const entry = entryProps(props, 'taps');
  return (
    <Part title="Tap-offs" id="tap-offs">
      {tapFaults.length > 0 && (
        <div class="faults">
          <FaultList
            caption={tapFaults.length === 1 ? 'One cell to put right' : `${tapFaults.length} cells to put right`}
            faults={tapFaults.map(({ row, column, value, problem, remedy }) => ({
              row: row ?? 1,
              column: column ?? 'the row',
              value,
              remedy: `${problem} ${remedy}`,
            }))}
          />
        </div>
      )}
      <TextArea
        {...entry}
        label="Rows of the tap list"
        kind="sheet"
        rows={Math.min(30, entry.value.split('\n').length + 3)}
        hint="Copy to a spreadsheet and paste back, or type. Columns: tap, at, phases, neutral, device, load VA or load A, pf, serves, pair, and at need fixed, interrupting kA, continuous, third harmonic, phase may change, drop, weight. What the sheet has no column for stays with the tap-off of the same label."
      />
    </Part>
  );
}
