import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { noFault } from '../../../views/components/fault-of.ts';
import { MePage, type MePageProps } from '../../../views/pages/me.tsx';
import { changePassword, passwordSchema } from '../../actions/accounts.ts';
import type { Context } from '../../actions/context.ts';
import { listTokens, makeToken, revokeToken } from '../../actions/tokens.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, type FormTrouble, formSubmission, readForm } from './form.ts';
import { goTo, sendPage } from './page.ts';

const passwordForm = z.strictObject({ current: z.string().max(200), next: passwordSchema });
const tokenForm = z.strictObject({ label: z.string().trim().min(1, 'say what it is for').max(120) });

/** One's own account. */
export function me(app: App, context: Context): void {
  const show = async (
    request: FastifyRequest,
    reply: FastifyReply,
    { trouble, secret = null }: { trouble?: FormTrouble; secret?: MePageProps['secret'] } = {},
  ) => {
    const viewer = viewerOf(request);
    const tokens = await listTokens(context, viewer);
    if (secret !== null) reply.header('cache-control', 'no-store');
    return sendPage(
      request,
      reply,
      {
        title: viewer.name,
        asOf: context.clock(),
        trail: [{ word: 'Jobs', href: '/jobs' }],
        status: trouble?.status ?? 200,
        ...(trouble === undefined ? {} : { flash: { kind: 'stop' as const, text: trouble.notice } }),
      },
      MePage({
        ...viewer,
        tokens: tokens.map((token) => ({
          ...token,
          createdAt: new Date(token.createdAt),
          lastUsedAt: token.lastUsedAt === null ? null : new Date(token.lastUsedAt),
        })),
        csrf: formToken(reply),
        submissionId: context.newId(),
        entered: trouble === undefined ? {} : entered(request),
        faultOf: trouble?.faultOf ?? noFault,
        secret,
      }),
    );
  };

  app.get('/me', { schema: { hide: true } }, (request, reply) => show(request, reply));

  app.post(
    '/me/password',
    {
      schema: { hide: true },
      preHandler: app.rateLimit({
        max: 10,
        timeWindow: '15 minutes',
        keyGenerator: (request) => `password ${request.viewer?.userId ?? request.ip}`,
      }),
    },
    async (request, reply) => {
      const tried = await attempt(async () => {
        const { current, next } = readForm(passwordForm, entered(request));
        await changePassword(context, viewerOf(request), current, next);
      });
      if (tried.ok) return goTo(reply, '/me', 'Password changed.');
      return show(request, reply, { trouble: ofCurrentPassword(tried.trouble) });
    },
  );

  app.post('/me/tokens', { schema: { hide: true } }, async (request, reply) => {
    const tried = await attempt(async () =>
      makeToken(context, viewerOf(request), readForm(tokenForm, entered(request)).label, formSubmission(request)),
    );
    if (!tried.ok) return show(request, reply, { trouble: tried.trouble });
    const { token, secret } = tried.value;
    if (secret === null) return goTo(reply, '/me#tokens', `The token ${token.label} was made before.`);
    return show(request, reply, { secret: { label: token.label, text: secret } });
  });

  app.post(
    '/me/tokens/:id/revocation',
    { schema: { hide: true, params: z.object({ id: z.string() }) } },
    async (request, reply) => {
      const tried = await attempt(() => revokeToken(context, viewerOf(request), request.params.id));
      if (!tried.ok) return show(request, reply, { trouble: tried.trouble });
      return goTo(reply, '/me#tokens', 'Token revoked.');
    },
  );
}

/** A wrong password is said beside its field; the account is known, so nothing is given away. */
function ofCurrentPassword(trouble: FormTrouble): FormTrouble {
  if (trouble.refusal.code !== 'wrong-login') return trouble;
  const said = 'This is not your password now. Check it, or ask an administrator for a new link.';
  return {
    ...trouble,
    status: 422,
    notice: 'The password was not changed.',
    faultOf: (name) => (name === 'current' ? said : undefined),
  };
}
