import { isDeepStrictEqual } from 'node:util';
import { faceOffsOf } from '../face-offs.ts';
import type { JobDesign } from '../job-design.ts';
import type { RunRow } from '../run-states.ts';

interface Drawn {
  readonly design: JobDesign;
  /** In document order, like the runs of the design. */
  readonly rows: readonly RunRow[];
}

/**
 * Ids of the runs that another design has changed: drawn or laid out anew, released, or facing something else. null where it
 * may have moved every run: other levels, types or hours, another order of work, a run more or less.
 */
export function drawnAnew(before: Drawn, now: Drawn): readonly string[] | null {
  if (!isFramedAlike(before.design, now.design) || !isOrderedAlike(before, now)) return null;
  const [facing, faces] = [faceOffsOf(before.design), faceOffsOf(now.design)];
  return now.rows
    .filter(
      (row, index) =>
        before.design.stored[index] !== now.design.stored[index] ||
        !isDeepStrictEqual(before.rows[index], row) ||
        !isDeepStrictEqual(facing.get(row.key), faces.get(row.key)),
    )
    .map(({ id }) => id);
}

function isFramedAlike({ job: a }: JobDesign, { job: b }: JobDesign): boolean {
  return (
    a.project === b.project &&
    a.levels === b.levels &&
    a.types === b.types &&
    a.labourBook === b.labourBook &&
    a.runs.length === b.runs.length
  );
}

/** The same runs one after another, on the same levels and with the same of them sound: each is the repeat that it was. */
function isOrderedAlike(before: Drawn, now: Drawn): boolean {
  const { job, layouts, stored } = before.design;
  return (
    before.rows.length === now.rows.length &&
    stored.length === now.rows.length &&
    now.rows.every(
      ({ id, key }, index) =>
        id === before.rows[index]?.id &&
        id === stored[index]?.id &&
        key === before.rows[index]?.key &&
        job.runs[index]?.level === now.design.job.runs[index]?.level &&
        layouts[index]?.ok === now.design.layouts[index]?.ok,
    )
  );
}
