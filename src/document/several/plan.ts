import type { Fault } from '../fault.ts';
import type { RunDocument } from '../schema/run.ts';

/** A run that would be made, and the one it is made from. */
export interface MadeRun {
  readonly run: RunDocument;
  readonly from: string;
}

/** What would be made of several runs, or everything that bars it; paths of faults are fields of what was asked. */
export type SeveralPlan =
  | {
      readonly ok: true;
      readonly made: readonly MadeRun[];
      /** Runs of the design that change with it, as they would stand. */
      readonly changed: readonly RunDocument[];
      /** Worth knowing before it is made, in words. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** So many runs are made at once at most: as large as the largest job. */
export const MOST_MADE = 4_000;
