import type { RunLayout } from '../layout/result.ts';
import type { BuswayType, Extra, Run, UnpricedJob } from '../model.ts';
import { countRun } from './count-run.ts';
import { planRods, type RodPlan } from './plan-rods.ts';
import type { TakeoffLine } from './result.ts';

/**
 * Everything to buy and set, counted from the layouts: lines by run in document order, then the rod stock of the whole
 * job, then what the estimator added by hand (item `extra`). Runs without a sound layout are left out. Pieces are
 * counted `each`, the slot closure in metres; lines of quantity nothing are not listed.
 *
 * Source: the job's own rules of takeoff (job document, "Takeoff items").
 * Example: a run of four 20 ft sections fed at its end gives one line `section`, 6 096 mm, quantity 4, and one `end-cap`.
 */
export function takeOff(job: UnpricedJob, layouts: readonly RunLayout[]): readonly TakeoffLine[] {
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  const typeOf = new Map(job.types.map((type) => [type.id, type]));
  const byRun = job.runs.flatMap((run) => {
    const layout = layoutOf.get(run.id);
    if (!layout?.ok) return [];
    const type = typeOf.get(run.type);
    if (!type) throw new Error(`run ${run.id} names the busway type ${run.type}, which the job does not hold`);
    return countOf(run, type, layout);
  });
  return [...byRun, ...planRods(job, layouts).map(rodStockLine), ...job.extras.map(extraLine)];
}

interface Count {
  readonly run: Run;
  readonly type: BuswayType;
  readonly lines: readonly TakeoffLine[];
}

/** Lines of runs that were counted before: in a large job one run is drawn anew and thousands are not. */
const counts = new WeakMap<RunLayout, Count>();

function countOf(run: Run, type: BuswayType, layout: RunLayout): readonly TakeoffLine[] {
  const known = counts.get(layout);
  if (known?.run === run && known.type === type) return known.lines;
  const lines = countRun(run, type, layout);
  counts.set(layout, { run, type, lines });
  return lines;
}

function rodStockLine({ rod, plan }: RodPlan): TakeoffLine {
  return { ...jobWide, item: 'rod-stock', kind: rod, length: plan.stock, quantity: plan.sticks, unit: 'each' };
}

function extraLine(extra: Extra): TakeoffLine {
  return {
    ...jobWide,
    item: 'extra',
    kind: extra.item,
    level: extra.level,
    quantity: extra.quantity,
    unit: extra.unit,
  };
}

const jobWide = { kind: null, hand: null, length: null, type: null, run: null, level: null, places: [] } as const;
