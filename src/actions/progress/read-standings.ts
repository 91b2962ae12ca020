import type { Reader } from '../../store/database.ts';
import type { RunScope } from '../../store/run-counts.ts';
import { faceOffsOf } from '../face-offs.ts';
import type { JobDesign } from '../job-design.ts';
import { type RunRow, statesOf } from '../run-states.ts';
import { budgetAt, budgetOf } from './budget-of.ts';
import type { RunStanding } from './standing.ts';
import { standingOf } from './standing-of.ts';

/** How far these runs are; `rows` are whole boundaries, since work on one run makes the test of another stale. */
export async function readStandings(
  reader: Reader,
  projectId: string,
  design: JobDesign,
  rows: readonly RunRow[],
  scope: RunScope,
): Promise<RunStanding[]> {
  const runs = new Map(design.job.runs.map((run) => [run.id, run]));
  const layouts = new Map(design.layouts.map((layout) => [layout.run, layout]));
  const budget = scope === 'all' ? budgetOf(design) : budgetAt(design, new Set(rows.map(({ key }) => key)));
  const faceOffs = faceOffsOf(design);
  const states = await statesOf(reader, projectId, rows, scope, { runs, layouts });
  return states.flatMap((state) => {
    const run = runs.get(state.key);
    const layout = layouts.get(state.key);
    if (run === undefined || layout === undefined) return []; // made after the design was read: the next reading has it
    return [
      standingOf({ state, run, layout, budget: budget.get(state.key) ?? [], faceOffs: faceOffs.get(state.key) ?? [] }),
    ];
  });
}
