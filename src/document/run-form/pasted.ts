import type { Entered } from '../form/entries.ts';
import type { ListFault } from '../lists/list-fault.ts';
import { ROW_GROUPS, type RowGroup } from './entries.ts';
import { pasteCell, pasteRows } from './row-sheet.ts';

export interface Pasted {
  /** The entries with the pasted rows in their places. What could not be read stays in its own field. */
  readonly entered: Entered;
  /** How many rows each group was given. */
  readonly filled: Readonly<Partial<Record<RowGroup, number>>>;
  readonly faults: Readonly<Partial<Record<RowGroup, readonly ListFault[]>>>;
}

/** Name of the field that takes rows of a spreadsheet; `.at` behind it names the cell that they were pasted into. */
export function pasteName(group: RowGroup): string {
  return `paste.${group}`;
}

/** Takes every block of rows that was pasted into a run's form. */
export function takePasted(entered: Entered): Pasted {
  return ROW_GROUPS.reduce<Pasted>(takeGroup, { entered, filled: {}, faults: {} });
}

function takeGroup(pasted: Pasted, group: RowGroup): Pasted {
  const { [pasteName(group)]: text = '', [`${pasteName(group)}.at`]: at, ...rest } = pasted.entered;
  if (text.trim() === '') return { ...pasted, entered: rest };
  const read = pasteRows(group, text, rest, pasteCell(group, at));
  return read.ok
    ? { ...pasted, entered: read.entered, filled: { ...pasted.filled, [group]: read.rows } }
    : { ...pasted, faults: { ...pasted.faults, [group]: read.faults } };
}
