import cookie from '@fastify/cookie';
import csrf from '@fastify/csrf-protection';
import session from '@fastify/session';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Context } from '../../actions/context.ts';
import { sessionStore } from '../../store/sessions.ts';
import type { App } from '../app-type.ts';

declare module 'fastify' {
  interface Session {
    userId?: string;
    destroy(): Promise<void>;
    regenerate(): Promise<void>;
  }
}

const TWO_WEEKS_MS = 14 * 24 * 3600 * 1000;
const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Cookie sessions kept in the database, and the token that every form and script of a session must carry. */
export async function sessions(app: App, context: Context, secret: string): Promise<void> {
  await app.register(cookie);
  await app.register(session, {
    secret,
    cookieName: 'jobbook',
    cookie: { path: '/', httpOnly: true, sameSite: 'lax', secure: 'auto', maxAge: TWO_WEEKS_MS },
    saveUninitialized: false,
    rolling: false,
    store: sessionStore(context.database.db, context.clock, TWO_WEEKS_MS),
  });
  await app.register(csrf, { sessionPlugin: '@fastify/session', getToken: sentToken });
  app.addHook('preHandler', (request, reply, done) => {
    if (SAFE.has(request.method) || request.byToken) return done();
    app.csrfProtection(request, reply, done);
  });
}

/** The session's form token; makes the session if there is none yet. */
export function formToken(reply: FastifyReply): string {
  return reply.generateCsrf();
}

function sentToken(request: FastifyRequest): string | undefined {
  const header = request.headers['x-csrf-token'];
  if (typeof header === 'string') return header;
  const body = request.body;
  if (typeof body !== 'object' || body === null || !('_csrf' in body)) return undefined;
  return typeof body._csrf === 'string' ? body._csrf : undefined;
}
