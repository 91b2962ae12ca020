import { ApiDocsPage } from '../../../views/pages/api-docs.tsx';
import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { describeApi } from './api-docs/describe.ts';
import { parseOpenApi } from './api-docs/open-api.ts';
import { sendPage } from './page.ts';

/** The API in words, for people; open to everybody, as its description is. */
export function apiDocs(app: App, context: Context): void {
  app.get('/docs', { schema: { hide: true } }, (request, reply) => {
    const document = parseOpenApi(app.swagger());
    return sendPage(
      request,
      reply,
      {
        title: 'The API',
        asOf: context.clock(),
        trail: request.viewer === null ? [] : [{ word: 'Jobs', href: '/jobs' }],
      },
      ApiDocsPage({ about: document.info.description ?? '', ...describeApi(document) }),
    );
  });
}
