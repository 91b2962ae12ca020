import swagger from '@fastify/swagger';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import type { App } from '../app-type.ts';

/** OpenAPI 3.1 made from the same zod schemas that check the requests; served at /api/v1/openapi.json. */
export async function openapi(app: App): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Busway Job Book',
        version: '1',
        description:
          'One record of an overhead plug-in busway job. Errors are RFC 9457 problem details. Whatever can change carries an ETag; send it back as If-Match. ' +
          'Creates take an Idempotency-Key. Lengths are millimetres, money is integer minor units and reaches the office alone.',
      },
      components: { securitySchemes: { token: { type: 'http', scheme: 'bearer' } } },
      security: [{ token: [] }],
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
}
