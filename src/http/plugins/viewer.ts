import type { FastifyRequest } from 'fastify';
import { findViewer } from '../../actions/accounts.ts';
import type { Context, Viewer } from '../../actions/context.ts';
import { refuse } from '../../actions/refused.ts';
import { viewerByToken } from '../../actions/tokens.ts';
import type { App } from '../app-type.ts';

declare module 'fastify' {
  interface FastifyRequest {
    viewer: Viewer | null;
    byToken: boolean;
  }
}

/** Says who is asking: by bearer token, else by session. */
export function viewers(app: App, context: Context): void {
  app.decorateRequest('viewer', null);
  app.decorateRequest('byToken', false);
  app.addHook('onRequest', async (request) => {
    const bearer = /^Bearer (\S+)$/i.exec(request.headers.authorization ?? '')?.[1];
    if (bearer !== undefined) {
      request.viewer = (await viewerByToken(context, bearer)) ?? refuse({ code: 'signed-out' });
      request.byToken = true;
      return;
    }
    const userId = request.session?.userId;
    if (userId !== undefined) request.viewer = await findViewer(context, userId);
  });
}

/** The viewer, or the refusal that sends a page to the sign-in form and a script to its token. */
export function viewerOf(request: FastifyRequest): Viewer {
  return request.viewer ?? refuse({ code: 'signed-out' });
}
