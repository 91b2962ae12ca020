import { z } from 'zod';
import type { Context, Viewer } from '../../actions/context.ts';
import type { Submission } from '../../actions/once.ts';
import { type Listed, listOf, type PageQuery, pageQuerySchema } from '../../actions/paging.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import {
  changeHeaders,
  createHeaders,
  itemParams,
  problems,
  projectParams,
  readSubmission,
  readVersion,
  stamp,
} from './conventions.ts';

export interface Versioned {
  readonly id: string;
  readonly version: number;
}

/** A part of the design that is made, read, changed and removed as a fragment of the job document. */
export interface Noun<Body, View extends Versioned> {
  readonly path: string;
  readonly tag: string;
  readonly one: string;
  readonly body: z.ZodType;
  readonly view: z.ZodType;
  readonly get: (context: Context, viewer: Viewer, projectId: string, id: string) => Promise<View>;
  readonly create: (
    context: Context,
    viewer: Viewer,
    projectId: string,
    body: Body,
    submission: Submission | null,
  ) => Promise<View>;
  readonly change: (
    context: Context,
    viewer: Viewer,
    projectId: string,
    id: string,
    version: number,
    body: Body,
  ) => Promise<View>;
  readonly remove: (context: Context, viewer: Viewer, projectId: string, id: string, version: number) => Promise<void>;
}

/** A plain list of such parts; nouns with filters declare their own. */
export function list<View extends Versioned>(
  app: App,
  context: Context,
  noun: Pick<Noun<unknown, View>, 'path' | 'tag' | 'view'>,
  read: (context: Context, viewer: Viewer, projectId: string, page: PageQuery) => Promise<Listed<View>>,
): void {
  app.get(
    `/projects/:projectId/${noun.path}`,
    {
      schema: {
        tags: [noun.tag],
        summary: `${noun.tag} of a job`,
        params: projectParams,
        querystring: pageQuerySchema,
        response: { 200: listOf(noun.view), ...problems },
      },
    },
    (request) => read(context, viewerOf(request), request.params.projectId, request.query),
  );
}

export function crud<Body, View extends Versioned>(app: App, context: Context, noun: Noun<Body, View>): void {
  const tags = [noun.tag];
  const item = `/projects/:projectId/${noun.path}/:id`;

  app.post(
    `/projects/:projectId/${noun.path}`,
    {
      schema: {
        tags,
        summary: `Add a ${noun.one}`,
        params: projectParams,
        headers: createHeaders,
        body: noun.body,
        response: { 201: noun.view, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params as z.infer<typeof projectParams>;
      const made = await noun.create(
        context,
        viewerOf(request),
        projectId,
        request.body as Body,
        readSubmission(request),
      );
      stamp(reply, made.version);
      return reply.code(201).header('location', `/api/v1/projects/${projectId}/${noun.path}/${made.id}`).send(made);
    },
  );

  app.get(
    item,
    { schema: { tags, summary: `One ${noun.one}`, params: itemParams, response: { 200: noun.view, ...problems } } },
    async (request, reply) => {
      const { projectId, id } = request.params as z.infer<typeof itemParams>;
      const view = await noun.get(context, viewerOf(request), projectId, id);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    item,
    {
      schema: {
        tags,
        summary: `Change a ${noun.one}`,
        params: itemParams,
        headers: changeHeaders,
        body: noun.body,
        response: { 200: noun.view, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params as z.infer<typeof itemParams>;
      const view = await noun.change(
        context,
        viewerOf(request),
        projectId,
        id,
        readVersion(request),
        request.body as Body,
      );
      stamp(reply, view.version);
      return view;
    },
  );

  app.delete(
    item,
    {
      schema: {
        tags,
        summary: `Remove a ${noun.one}`,
        params: itemParams,
        headers: changeHeaders,
        response: { 204: z.void(), ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params as z.infer<typeof itemParams>;
      await noun.remove(context, viewerOf(request), projectId, id, readVersion(request));
      return reply.code(204).send();
    },
  );
}
