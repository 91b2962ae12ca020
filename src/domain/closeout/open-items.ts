import { groupBy } from '../takeoff/group-by.ts';
import type { Gap, GapReason } from './gap.ts';
import type { RowId } from './readiness.ts';

/** Gaps of one run and one reason together, so that a list of them stays readable: "joints not accepted: J01, J02". */
export interface OpenItem {
  readonly run: string | null;
  readonly row: RowId;
  readonly reason: GapReason;
  readonly marks: readonly string[];
  readonly count: number;
}

/** The honest list: every gap, by run in the order handed in, none left out. */
export function openItems(gaps: readonly Gap[]): OpenItem[] {
  return groupBy(gaps, ({ run, row, reason }) => JSON.stringify([run, row, reason])).map((same) => {
    const { run, row, reason } = same[0];
    return { run, row, reason, marks: same.map(shortMark), count: same.reduce((sum, gap) => sum + gap.count, 0) };
  });
}

function shortMark({ run, mark }: Gap): string {
  return run !== null && mark.startsWith(run) && mark.length > run.length
    ? mark.slice(run.length).replace(/^[- ]/, '')
    : mark;
}
