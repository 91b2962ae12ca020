import type { Context } from '../../../actions/context.ts';
import type { App } from '../../app-type.ts';
import { fieldRunPage } from '../field-run.ts';
import { floor } from '../floor.ts';
import { inspections } from '../inspections.ts';
import { inspectionsRecord } from '../inspections-record.ts';
import { insulation } from '../insulation.ts';
import { joint } from '../joint.ts';
import { piece } from '../piece.ts';
import { runEnd } from '../run-end.ts';
import { support } from '../support.ts';
import { tap } from '../tap.ts';
import { tools } from '../tools.ts';

/** The pages of the floor. */
export function fieldRoutes(app: App, context: Context): void {
  floor(app, context);
  fieldRunPage(app, context);
  piece(app, context);
  joint(app, context);
  support(app, context);
  tap(app, context);
  runEnd(app, context);
  insulation(app, context);
  tools(app, context);
  inspections(app, context);
  inspectionsRecord(app, context);
}
