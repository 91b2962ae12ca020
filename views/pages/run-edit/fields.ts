import type { Entered, FaultOf } from '../../components/fault-of.ts';
import { faultProps } from '../../components/fault-of.ts';
import { runEntryWord } from '../../words/run-entries.ts';

export interface Filled {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
}

/** Name, label, text and fault of an entry of the run. */
export function entryProps({ entered, faultOf }: Filled, path: string) {
  return { name: path, label: runEntryWord(path), value: entered[path] ?? '', ...faultProps(faultOf, path) };
}

/** Rows to show: those filled, and so many empty ones. */
export function rowCount(entered: Entered, group: string, spare: number): number {
  const pattern = new RegExp(`^${group}\\[(\\d{1,3})\\]\\.`);
  const filled = Object.entries(entered).flatMap(([name, text]) => {
    const row = pattern.exec(name)?.[1];
    const isChoice = name.endsWith('.turn') || name.endsWith('.kind'); // an empty row has these too
    return row === undefined || text === '' || isChoice ? [] : [Number(row) + 1];
  });
  return Math.max(0, ...filled) + spare;
}
