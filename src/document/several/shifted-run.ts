import type { RunDocument } from '../schema/run.ts';

export interface Shift {
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * A run moved in plan, mm: its start and the plan positions of what its taps serve; distances along the run stay. A branch
 * follows its tee, so only a start that it states is moved. By nothing it is the same run.
 */
export function shiftedRun(run: RunDocument, by: Shift): RunDocument {
  if (by.xMm === 0 && by.yMm === 0) return run;
  const start = run.start ?? (run.feed.kind === 'tee' ? undefined : { xMm: 0, yMm: 0, zMm: 0 });
  return {
    ...run,
    ...(start === undefined ? {} : { start: { ...start, ...moved(start, by) } }),
    ...(run.taps === undefined
      ? {}
      : { taps: run.taps.map((tap) => (tap.near === undefined ? tap : { ...tap, near: moved(tap.near, by) })) }),
  };
}

function moved(point: Shift, by: Shift): Shift {
  return { xMm: tidyMm(point.xMm + by.xMm), yMm: tidyMm(point.yMm + by.yMm) };
}

/** A sum of millimetres without the dust of binary fractions: lengths are kept to 0.0125 mm. */
export function tidyMm(mm: number): number {
  return Math.round(mm * 10_000) / 10_000 + 0;
}
