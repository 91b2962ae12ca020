import { applyWhatIf } from '../document/what-if/apply-what-if.ts';
import { type Beside, beside } from '../document/what-if/beside.ts';
import type { WhatIf } from '../document/what-if/schema.ts';
import type { Context, Viewer } from './context.ts';
import { crewPlanOf } from './crew-plan-of.ts';
import { checked } from './designs.ts';
import { figuresOf } from './figures.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

export interface WhatIfAnswer extends Beside {
  readonly designVersion: number;
}

/** What the job would come to with a change, beside what it comes to. Nothing is written; a change that cannot be is refused with every reason. Money: office only. */
export async function whatIf(
  context: Context,
  viewer: Viewer,
  projectId: string,
  change: WhatIf,
): Promise<WhatIfAnswer> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const { document, job, figures, designVersion } = await figuresOf(db, projectId);
  const applied = applyWhatIf(document, change);
  if (!applied.ok) return refuse({ code: 'invalid', faults: applied.faults });
  const plan = await crewPlanOf(context, viewer, projectId);
  return { designVersion, ...beside({ job, figures }, checked(applied.document), plan, applied.touched) };
}
