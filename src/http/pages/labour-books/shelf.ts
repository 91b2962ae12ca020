import { z } from 'zod';
import type { Context } from '../../../actions/context.ts';
import { previewBook } from '../../../actions/labour-book-changes.ts';
import { getShelved, keepBookSchema, keepOnShelf, takeFromShelf } from '../../../actions/labour-book-shelf.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, entered, formSubmission, formVersion, readForm } from '../form.ts';
import { goTo } from '../page.ts';
import { shelfQuery, showShelf } from './show-shelf.ts';
import { showUpgrade } from './show-upgrade.ts';

const params = z.object({ jobId: z.string() });
const oneParams = params.extend({ id: z.string() });

/** The company's labour books beside the job's own. Office only. */
export function labourBookShelf(app: App, context: Context): void {
  const path = '/jobs/:jobId/labour-book';

  app.get(`${path}/shelf`, { schema: { hide: true, params, querystring: shelfQuery } }, (request, reply) =>
    showShelf(context, request, reply, {}),
  );

  app.post(`${path}/shelf`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const fields = entered(request);
    const tried = await attempt(async () =>
      keepOnShelf(context, viewerOf(request), jobId, readForm(keepBookSchema, fields), formSubmission(request)),
    );
    if (!tried.ok) return showShelf(context, request, reply, { fields, trouble: tried.trouble });
    const { name, version } = tried.value;
    return goTo(reply, `/jobs/${jobId}/labour-book/shelf`, `${name} ${version} is on the shelf.`);
  });

  app.get(`${path}/shelf/:id`, { schema: { hide: true, params: oneParams } }, async (request, reply) => {
    const { jobId, id } = request.params;
    const viewer = viewerOf(request);
    const { name, version, document } = await getShelved(context, viewer, jobId, id);
    const upgrade = await previewBook(context, viewer, jobId, document);
    const action = `/jobs/${jobId}/labour-book/shelf/${id}`;
    return showUpgrade(context, request, reply, { upgrade, to: version, title: `${name} ${version}`, action });
  });

  app.post(`${path}/shelf/:id`, { schema: { hide: true, params: oneParams } }, async (request, reply) => {
    const { jobId, id } = request.params;
    const tried = await attempt(async () =>
      takeFromShelf(context, viewerOf(request), jobId, formVersion(request) - 1, id),
    );
    if (!tried.ok) return showShelf(context, request, reply, { trouble: tried.trouble });
    return goTo(
      reply,
      `/jobs/${jobId}/hours`,
      'The job works with the book of the shelf, and the hours are worked anew.',
    );
  });
}
