import type { Context } from '../../actions/context.ts';
import { compareRun, revisionNameSchema } from '../../actions/revisions.ts';
import { printDifference, printedDifferenceSchema } from '../../document/print-difference.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { itemParams, problems } from './conventions.ts';

const name = revisionNameSchema.describe('A revision by its number, or "draft".');

/** Revisions of a run. */
export function revisions(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/runs/:id/revisions/:a/compare/:b',
    {
      schema: {
        tags: ['Runs'],
        summary: 'What two revisions of a run differ in',
        description:
          'Pieces, joints, hangers and tap-offs that come, go, move or change, and what the step takes up again. With "draft" as the second: what releasing the run now would do.',
        params: itemParams.extend({ a: name, b: name }),
        response: { 200: printedDifferenceSchema, ...problems },
      },
    },
    async (request) => {
      const { projectId, id, a, b } = request.params;
      return printDifference((await compareRun(context, viewerOf(request), projectId, id, [a, b])).difference);
    },
  );
}
