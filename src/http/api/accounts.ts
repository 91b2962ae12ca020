import { z } from 'zod';
import { changeUser, invite, inviteSchema, listUsers, userChangeSchema, userSchema } from '../../actions/accounts.ts';
import type { Context } from '../../actions/context.ts';
import { listMembers, memberSchema, membershipSchema, removeMember, setMember } from '../../actions/members.ts';
import { listTokens, makeToken, revokeToken, tokenSchema } from '../../actions/tokens.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import {
  changeHeaders,
  createHeaders,
  problems,
  projectParams,
  readSubmission,
  readVersion,
  stamp,
} from './conventions.ts';

const tags = ['Accounts'];

/** People, their tokens and their places in a job. Passwords are set on pages alone. */
export function accounts(app: App, context: Context): void {
  app.get(
    '/me',
    {
      schema: {
        tags,
        summary: 'Who you are',
        response: {
          200: z.object({ userId: z.string(), name: z.string(), email: z.string(), administrator: z.boolean() }),
          ...problems,
        },
      },
    },
    async (request) => viewerOf(request),
  );

  app.get(
    '/users',
    {
      schema: {
        tags,
        summary: 'All accounts (administrator)',
        response: { 200: z.object({ items: z.array(userSchema) }), ...problems },
      },
    },
    async (request) => ({
      items: await listUsers(context, viewerOf(request)),
    }),
  );

  app.post(
    '/users',
    {
      schema: {
        tags,
        summary: 'Make an account (administrator)',
        headers: createHeaders,
        body: inviteSchema,
        response: {
          201: z.object({
            user: userSchema,
            link: z
              .string()
              .nullable()
              .describe('One-time path where its owner sets a password; null when the same key is sent again.'),
          }),
          ...problems,
        },
      },
    },
    async (request, reply) => {
      const { user, secret } = await invite(context, viewerOf(request), request.body, readSubmission(request));
      stamp(reply, user.version);
      return reply.code(201).send({ user, link: secret === null ? null : `/invitation/${secret}` });
    },
  );

  app.patch(
    '/users/:userId',
    {
      schema: {
        tags,
        summary: 'Change or close an account (administrator)',
        params: z.object({ userId: z.string() }),
        headers: changeHeaders,
        body: userChangeSchema,
        response: { 200: userSchema, ...problems },
      },
    },
    async (request, reply) => {
      const user = await changeUser(
        context,
        viewerOf(request),
        request.params.userId,
        readVersion(request),
        request.body,
      );
      stamp(reply, user.version);
      return user;
    },
  );

  app.get(
    '/tokens',
    {
      schema: {
        tags,
        summary: 'Your tokens',
        response: { 200: z.object({ items: z.array(tokenSchema) }), ...problems },
      },
    },
    async (request) => ({
      items: await listTokens(context, viewerOf(request)),
    }),
  );

  app.post(
    '/tokens',
    {
      schema: {
        tags,
        summary: 'Make a token for scripts',
        headers: createHeaders,
        body: z.strictObject({ label: z.string().trim().min(1).max(120) }),
        response: {
          201: z.object({
            token: tokenSchema,
            secret: z.string().nullable().describe('Told once; null when the same key is sent again.'),
          }),
          ...problems,
        },
      },
    },
    async (request, reply) =>
      reply.code(201).send(await makeToken(context, viewerOf(request), request.body.label, readSubmission(request))),
  );

  app.delete(
    '/tokens/:id',
    {
      schema: {
        tags,
        summary: 'Revoke a token',
        params: z.object({ id: z.string() }),
        response: { 204: z.void(), ...problems },
      },
    },
    async (request, reply) => {
      await revokeToken(context, viewerOf(request), request.params.id);
      return reply.code(204).send();
    },
  );

  app.get(
    '/projects/:projectId/members',
    {
      schema: {
        tags,
        summary: 'Who works on a job',
        params: projectParams,
        response: { 200: z.object({ items: z.array(memberSchema) }), ...problems },
      },
    },
    async (request) => ({
      items: await listMembers(context, viewerOf(request), request.params.projectId),
    }),
  );

  app.put(
    '/projects/:projectId/members',
    {
      schema: {
        tags,
        summary: 'Add a member or change a role',
        params: projectParams,
        body: membershipSchema,
        response: { 200: memberSchema, ...problems },
      },
    },
    (request) => setMember(context, viewerOf(request), request.params.projectId, request.body),
  );

  app.delete(
    '/projects/:projectId/members/:userId',
    {
      schema: {
        tags,
        summary: 'Take a member out',
        params: projectParams.extend({ userId: z.string() }),
        headers: changeHeaders,
        response: { 204: z.void(), ...problems },
      },
    },
    async (request, reply) => {
      await removeMember(
        context,
        viewerOf(request),
        request.params.projectId,
        request.params.userId,
        readVersion(request),
      );
      return reply.code(204).send();
    },
  );
}
