import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { FirstAccountPage, InvitationPage, SignInPage } from '../../../views/pages/sign-in.tsx';
import { acceptInvitation, accountSchema, login, makeFirstAccount, passwordSchema } from '../../actions/accounts.ts';
import type { Context, Viewer } from '../../actions/context.ts';
import { refuse } from '../../actions/refused.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { attempt, entered, readForm } from './form.ts';
import { goTo, sendPage } from './page.ts';

const secretParams = z.object({ secret: z.string() });

/** Coming in: signing in and out, the first account, invitations. */
export function signIn(app: App, context: Context): void {
  const show = (request: FastifyRequest, reply: FastifyReply, notice?: string, status = 200) => {
    const { next } = request.query as { next?: string };
    return sendPage(
      request,
      reply,
      {
        title: 'Sign in',
        asOf: context.clock(),
        trail: [],
        status,
        ...(notice === undefined ? {} : { flash: { kind: 'stop' as const, text: notice } }),
      },
      SignInPage({ csrf: formToken(reply), next: localPath(next), email: entered(request).email ?? '' }),
    );
  };

  const timeWindow = '15 minutes';
  const byPlace = app.createRateLimit({ max: 30, timeWindow });
  const byAccount = app.createRateLimit({
    max: 10,
    timeWindow,
    keyGenerator: (request) => `account ${entered(request).email ?? ''}`.toLowerCase(),
  });

  app.get('/sign-in', { schema: { hide: true } }, (request, reply) => show(request, reply));

  app.post(
    '/sign-in',
    {
      schema: { hide: true },
      preHandler: async (request) => {
        await patience(byPlace, request);
        await patience(byAccount, request);
      },
    },
    async (request, reply) => {
      const { email = '', password = '', next } = entered(request);
      const tried = await attempt(() => login(context, { email, password }));
      if (!tried.ok) return show(request, reply, tried.trouble.notice, tried.trouble.status);
      await come(request, tried.value);
      return goTo(reply, localPath(next));
    },
  );

  app.post('/sign-out', { schema: { hide: true } }, async (request, reply) => {
    await request.session.destroy();
    return reply.redirect('/sign-in', 303);
  });

  app.get('/first-account/:secret', { schema: { hide: true, params: secretParams } }, (request, reply) =>
    sendPage(
      request,
      reply,
      { title: 'Make the first account', asOf: context.clock(), trail: [] },
      FirstAccountPage({
        csrf: formToken(reply),
        secret: request.params.secret,
        entered: {},
        faultOf: () => undefined,
      }),
    ),
  );

  app.post('/first-account/:secret', { schema: { hide: true, params: secretParams } }, async (request, reply) => {
    const fields = entered(request);
    const tried = await attempt(() =>
      Promise.resolve().then(() => makeFirstAccount(context, request.params.secret, readForm(accountSchema, fields))),
    );
    if (tried.ok) {
      await come(request, tried.value);
      return goTo(reply, '/jobs', 'Account made. Take the demo job to look around, or bring in a job of your own.');
    }
    const { notice, status, faultOf } = tried.trouble;
    return sendPage(
      request,
      reply,
      {
        title: 'Make the first account',
        asOf: context.clock(),
        trail: [],
        status,
        flash: { kind: 'stop', text: notice },
      },
      FirstAccountPage({ csrf: formToken(reply), secret: request.params.secret, entered: fields, faultOf }),
    );
  });

  app.get('/invitation/:secret', { schema: { hide: true, params: secretParams } }, (request, reply) =>
    sendPage(
      request,
      reply,
      { title: 'Set your password', asOf: context.clock(), trail: [] },
      InvitationPage({ csrf: formToken(reply), secret: request.params.secret, faultOf: () => undefined }),
    ),
  );

  app.post('/invitation/:secret', { schema: { hide: true, params: secretParams } }, async (request, reply) => {
    const schema = z.strictObject({ password: passwordSchema });
    const tried = await attempt(() =>
      Promise.resolve().then(() =>
        acceptInvitation(context, request.params.secret, readForm(schema, entered(request)).password),
      ),
    );
    if (tried.ok) {
      await come(request, tried.value);
      return goTo(reply, '/jobs', 'Password set.');
    }
    const { notice, status, faultOf } = tried.trouble;
    return sendPage(
      request,
      reply,
      { title: 'Set your password', asOf: context.clock(), trail: [], status, flash: { kind: 'stop', text: notice } },
      InvitationPage({ csrf: formToken(reply), secret: request.params.secret, faultOf }),
    );
  });
}

type Limit = ReturnType<App['createRateLimit']>;

/** Guessing is slowed by the place it comes from and by the account it aims at. */
async function patience(limit: Limit, request: FastifyRequest): Promise<void> {
  const asked = await limit(request);
  if (!asked.isAllowed && asked.isExceeded) refuse({ code: 'too-many', minutes: Math.ceil(asked.ttlInSeconds / 60) });
}

/** A fresh session for the person, so that one planted before is worth nothing. */
async function come(request: FastifyRequest, viewer: Viewer): Promise<void> {
  await request.session.regenerate();
  request.session.userId = viewer.userId;
}

/** Only a path of this site. */
function localPath(next: string | undefined): string {
  return next !== undefined && /^\/(?![/\\])/.test(next) ? next : '/jobs';
}
