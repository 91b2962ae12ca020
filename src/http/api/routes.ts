import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { accounts } from './accounts.ts';
import { auditTrail } from './audit.ts';
import { bid } from './bid.ts';
import { buswayTypes } from './busway-types.ts';
import { closeoutApi } from './closeout.ts';
import { crewPlan } from './crew-plan.ts';
import { figuresApi } from './figures.ts';
import { frozenBids } from './frozen-bids.ts';
import { inspections } from './inspections.ts';
import { jobDocuments } from './job-documents.ts';
import { joints } from './joints.ts';
import { labourBook } from './labour-book.ts';
import { levels } from './levels.ts';
import { lists } from './lists.ts';
import { openapiDocument } from './openapi-document.ts';
import { projects } from './projects.ts';
import { runs } from './runs.ts';
import { sections } from './sections.ts';
import { severalRuns } from './several-runs.ts';
import { supports } from './supports.ts';
import { taps } from './taps.ts';

/** /api/v1: one line a noun. */
export function apiRoutes(app: App, context: Context): void {
  projects(app, context);
  jobDocuments(app, context);
  levels(app, context);
  buswayTypes(app, context);
  runs(app, context);
  severalRuns(app, context);
  sections(app, context);
  joints(app, context);
  supports(app, context);
  taps(app, context);
  inspections(app, context);
  lists(app, context);
  labourBook(app, context);
  bid(app, context);
  frozenBids(app, context);
  crewPlan(app, context);
  figuresApi(app, context);
  closeoutApi(app, context);
  accounts(app, context);
  auditTrail(app, context);
  openapiDocument(app);
}
