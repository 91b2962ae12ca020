import { jobDocumentJsonSchema } from '../../document/json-schema.ts';
import type { App } from '../app-type.ts';

/** The description of the API, and of the job document, for programs. */
export function openapiDocument(app: App): void {
  app.get('/openapi.json', { schema: { hide: true } }, async (_request, reply) =>
    reply.type('application/json').serializer(JSON.stringify).send(app.swagger()),
  );
  app.get('/job-document.schema.json', { schema: { hide: true } }, async (_request, reply) =>
    reply.type('application/schema+json').serializer(JSON.stringify).send(jobDocumentJsonSchema()),
  );
}
