import { filledRows } from '../../../src/document/bid-form/filled-rows.ts';
import type { Entered } from '../../components/fault-of.ts';

/** Rows to show: up to the last that holds anything, and some that stand empty for more. */
export function rowsToShow(entered: Entered, group: string, choices: readonly string[], spare: number): number {
  return Math.max(-1, ...filledRows(entered, group, choices)) + 1 + spare;
}
