import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import {
  archiveProject,
  changeProject,
  createProject,
  getProject,
  listProjects,
  projectViewSchema,
} from '../../actions/projects.ts';
import { projectSchema } from '../../document/job-document.ts';
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

const tags = ['Projects'];

export function projects(app: App, context: Context): void {
  app.get(
    '/projects',
    {
      schema: {
        tags,
        summary: 'The jobs you may reach',
        querystring: pageQuerySchema.extend({ q: z.string().optional(), archived: z.stringbool().optional() }),
        response: { 200: listOf(projectViewSchema), ...problems },
      },
    },
    (request) => listProjects(context, viewerOf(request), request.query),
  );

  app.post(
    '/projects',
    {
      schema: {
        tags,
        summary: 'Make an empty job',
        headers: createHeaders,
        body: projectSchema,
        response: { 201: projectViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const made = await createProject(context, viewerOf(request), request.body, readSubmission(request));
      stamp(reply, made.version);
      return reply.code(201).header('location', `/api/v1/projects/${made.id}`).send(made);
    },
  );

  app.get(
    '/projects/:projectId',
    { schema: { tags, summary: 'One job', params: projectParams, response: { 200: projectViewSchema, ...problems } } },
    async (request, reply) => {
      const project = await getProject(context, viewerOf(request), request.params.projectId);
      stamp(reply, project.version);
      return project;
    },
  );

  app.put(
    '/projects/:projectId',
    {
      schema: {
        tags,
        summary: 'Change a job’s heading',
        params: projectParams,
        headers: changeHeaders,
        body: projectSchema,
        response: { 200: projectViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const project = await changeProject(
        context,
        viewerOf(request),
        request.params.projectId,
        readVersion(request),
        request.body,
      );
      stamp(reply, project.version);
      return project;
    },
  );

  app.put(
    '/projects/:projectId/archived',
    {
      schema: {
        tags,
        summary: 'Put a job away, or bring it back',
        params: projectParams,
        headers: changeHeaders,
        body: z.strictObject({ archived: z.boolean() }),
        response: { 200: projectViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const project = await archiveProject(
        context,
        viewerOf(request),
        request.params.projectId,
        readVersion(request),
        request.body.archived,
      );
      stamp(reply, project.version);
      return project;
    },
  );
}
