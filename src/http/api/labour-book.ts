import type { Context } from '../../actions/context.ts';
import { getLabourBook, labourBookViewSchema, setLabourBook } from '../../actions/labour-books.ts';
import { labourBookSchema } from '../../document/job-document.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { changeHeaders, problems, projectParams, readVersion, stamp } from './conventions.ts';

const tags = ['Labour book'];

export function labourBook(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/labour-book',
    {
      schema: {
        tags,
        summary: 'The job’s labour book',
        params: projectParams,
        response: { 200: labourBookViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await getLabourBook(context, viewerOf(request), request.params.projectId);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    '/projects/:projectId/labour-book',
    {
      schema: {
        tags,
        summary: 'Set the labour book',
        params: projectParams,
        headers: changeHeaders,
        body: labourBookSchema,
        response: { 200: labourBookViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await setLabourBook(
        context,
        viewerOf(request),
        request.params.projectId,
        readVersion(request),
        request.body,
      );
      stamp(reply, view.version);
      return view;
    },
  );
}
