import { layoutsBeside, type Touched } from '../../domain/beside/layouts-beside.ts';
import { type ThingBeside, thingsBeside } from '../../domain/beside/things-beside.ts';
import { type Totals, totalsOf } from '../../domain/beside/totals.ts';
import { type Figures, figures } from '../../domain/figures.ts';
import type { Job } from '../../domain/model.ts';
import type { CrewPlan } from '../../domain/schedule/plan-crews.ts';
import type { JobDocument } from '../job-document.ts';
import { toModel } from '../to-model.ts';

export interface Base {
  readonly job: Job;
  readonly figures: Figures;
}

export interface Beside {
  readonly base: Totals;
  readonly changed: Totals;
  /** What is bought in another number. */
  readonly things: readonly ThingBeside[];
}

const NOTHING: Touched = { runs: new Set(), types: new Set() };

/** What a job comes to as it stands and as it would stand, from a changed copy of its document; nothing of the base is changed. */
export function beside(base: Base, changed: JobDocument, plan: CrewPlan | null, touched: Touched = NOTHING): Beside {
  const job = toModel(changed);
  const layouts = layoutsBeside({ job: base.job, layouts: base.figures.layouts }, job, touched);
  const worked = figures(job, layouts);
  return {
    base: totalsOf(base.job, base.figures, plan),
    changed: totalsOf(job, worked, plan),
    things: thingsBeside(base.figures.takeoff, worked.takeoff),
  };
}
