import type { JSX } from 'preact';
import { TextField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { entryProps } from './fields.ts';
import { RowsOf, type RowsOfProps } from './rows-of.tsx';

/** The legs, what they pass, and where no joint may stand. */
export function WayFields(props: Omit<RowsOfProps, 'group'>): JSX.Element {
  return (
    <Part title="Way" id="way">
      <p class="hint keys" data-scripted hidden>
        Enter and the arrows go from row to row, Alt+Insert and Alt+Delete add and remove one. A block copied from a
        spreadsheet can be pasted into any cell.
      </p>
      <RowsOf {...props} group="legs" />
      <div class="fields">
        <TextField
          {...entryProps(props, 'end.reachMm')}
          kind="length"
          hint="Measured like the last leg’s length. Without both the last leg is covered exactly."
        />
        <TextField {...entryProps(props, 'end.hardStopMm')} kind="length" />
      </div>
      <RowsOf {...props} group="crossings" />
      <RowsOf {...props} group="noJoint" />
    </Part>
  );
}
