import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { noFault } from '../../../views/components/fault-of.ts';
import { AccountsPage, type AccountsPageProps } from '../../../views/pages/accounts.tsx';
import { changeUser, invite, inviteSchema, listUsers, newPasswordLink } from '../../actions/accounts.ts';
import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, type FormTrouble, formSubmission, formVersion, readForm } from './form.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ userId: z.string() });

/** Everybody's account, for the administrator. */
export function accounts(app: App, context: Context): void {
  const show = async (
    request: FastifyRequest,
    reply: FastifyReply,
    { trouble, link = null }: { trouble?: FormTrouble; link?: AccountsPageProps['link'] } = {},
  ) => {
    const listed = await listUsers(context, viewerOf(request));
    if (link !== null) reply.header('cache-control', 'no-store');
    return sendPage(
      request,
      reply,
      {
        title: 'Accounts',
        asOf: context.clock(),
        trail: [{ word: 'Jobs', href: '/jobs' }],
        status: trouble?.status ?? 200,
        ...(trouble === undefined ? {} : { flash: { kind: 'stop' as const, text: trouble.notice } }),
      },
      AccountsPage({
        accounts: listed,
        csrf: formToken(reply),
        submissionId: context.newId(),
        entered: trouble === undefined ? {} : entered(request),
        faultOf: trouble?.faultOf ?? noFault,
        link,
      }),
    );
  };

  app.get('/accounts', { schema: { hide: true } }, (request, reply) => show(request, reply));

  app.post('/accounts', { schema: { hide: true } }, async (request, reply) => {
    const { administrator, ...fields } = entered(request);
    const tried = await attempt(async () => {
      const asked = readForm(inviteSchema.omit({ administrator: true }), fields);
      const account = { ...asked, administrator: administrator === 'yes' };
      return invite(context, viewerOf(request), account, formSubmission(request));
    });
    if (!tried.ok) return show(request, reply, { trouble: tried.trouble });
    const { user, secret } = tried.value;
    if (secret === null) return goTo(reply, '/accounts', `The account of ${user.name} was made before.`);
    return show(request, reply, { link: { for: user.name, url: invitationUrl(request, secret) } });
  });

  app.post('/accounts/:userId', { schema: { hide: true, params } }, async (request, reply) => {
    const disabled = entered(request).disabled === 'yes';
    const tried = await attempt(async () =>
      changeUser(context, viewerOf(request), request.params.userId, formVersion(request), { disabled }),
    );
    if (!tried.ok) return show(request, reply, { trouble: tried.trouble });
    const { name } = tried.value;
    return goTo(reply, '/accounts', `The account of ${name} is ${disabled ? 'closed' : 'open again'}.`);
  });

  app.post('/accounts/:userId/link', { schema: { hide: true, params } }, async (request, reply) => {
    const { userId } = request.params;
    const tried = await attempt(() => newPasswordLink(context, viewerOf(request), userId));
    if (!tried.ok) return show(request, reply, { trouble: tried.trouble });
    const user = (await listUsers(context, viewerOf(request))).find((one) => one.id === userId);
    return show(request, reply, { link: { for: user?.name ?? '', url: invitationUrl(request, tried.value) } });
  });
}

function invitationUrl(request: FastifyRequest, secret: string): string {
  return `${request.protocol}://${request.host}/invitation/${secret}`;
}
