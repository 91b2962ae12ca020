import type { JobDocument } from '../document/job-document.ts';
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
  const changed = checked(applied.document, { faultPath: (path, after) => pathOfChange(path, after, change) });
  const plan = await crewPlanOf(context, viewer, projectId);
  return { designVersion, ...beside({ job, figures }, changed, plan, applied.touched) };
}

/** Where the change says what a fault of the changed job comes from: the route of a run, the stock lengths of a type. */
function pathOfChange(path: string, { runs, buswayTypes }: JobDocument, { routes = [], stock = [] }: WhatIf): string {
  const [, noun, place] = /^(runs|buswayTypes)\[(\d+)\]/.exec(path) ?? [];
  const route = noun === 'runs' ? routes.findIndex(({ run }) => run === runs[Number(place)]?.id) : -1;
  if (route >= 0) return `routes[${route}].${path.endsWith('dropMm') ? 'dropMm' : 'legsMm'}`;
  const type = noun === 'buswayTypes' ? stock.findIndex((one) => one.type === buswayTypes[Number(place)]?.id) : -1;
  return type >= 0 ? `stock[${type}].lengthsMm` : path;
}
