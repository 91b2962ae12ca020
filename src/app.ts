import { createHash } from 'node:crypto';
import formbody from '@fastify/formbody';
import multipart from '@fastify/multipart';
import rateLimit from '@fastify/rate-limit';
import Fastify from 'fastify';
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { ChangeFeed } from './actions/changes.ts';
import type { Context } from './actions/context.ts';
import type { Config } from './config.ts';
import { apiRoutes } from './http/api/routes.ts';
import type { App } from './http/app-type.ts';
import { pageRoutes } from './http/pages/routes.ts';
import { assets } from './http/plugins/assets.ts';
import { answerErrors } from './http/plugins/errors.ts';
import { openapi } from './http/plugins/openapi.ts';
import { security } from './http/plugins/security.ts';
import { sessions } from './http/plugins/sessions.ts';
import { keepFile, uploads } from './http/plugins/uploads.ts';
import { viewers } from './http/plugins/viewer.ts';

export interface AppParts {
  readonly config: Pick<Config, 'logLevel' | 'tls' | 'trustProxy' | 'publicUrl'>;
  readonly context: Context;
  /** Signs the session cookies; kept in the database, so that it holds for every server process. */
  readonly sessionSecret: string;
}

const BODY_LIMIT = 96 * 1024 * 1024;
const UPLOAD_LIMIT = 24 * 1024 * 1024;

/** The whole service, composed; it never listens. */
export async function buildApp({ config, context, sessionSecret }: AppParts): Promise<App> {
  const app = Fastify({
    logger:
      config.logLevel === 'silent'
        ? false
        : { level: config.logLevel, redact: ['req.headers.authorization', 'req.headers.cookie'] },
    trustProxy: config.trustProxy,
    bodyLimit: BODY_LIMIT,
    genReqId: () => context.newId(),
    ...(config.tls === null ? {} : { https: config.tls }),
  }).withTypeProvider<ZodTypeProvider>() as unknown as App;
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  answerErrors(app);

  const feed = new ChangeFeed(context);
  app.addHook('onClose', async () => feed.close());
  await security(app, config.tls !== null);
  await app.register(formbody, { bodyLimit: UPLOAD_LIMIT });
  uploads(app);
  await app.register(multipart, {
    attachFieldsToBody: 'keyValues',
    onFile: keepFile,
    limits: { fileSize: UPLOAD_LIMIT, fieldSize: UPLOAD_LIMIT, files: 4 },
  });
  await app.register(rateLimit, { global: false });
  await assets(app);
  await sessions(app, context, createHash('sha256').update(sessionSecret).digest('hex'));
  viewers(app, context);
  await openapi(app);
  await app.register(async (api) => apiRoutes(api as App, context), { prefix: '/api/v1' });
  await app.register(async (pages) => pageRoutes(pages as App, context, feed));
  return app;
}
