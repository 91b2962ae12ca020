import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { SettingsPage, type SettingsPageProps, SettingsTools } from '../../../views/pages/settings.tsx';
import { listBuswayTypes } from '../../actions/busway-types.ts';
import type { Context } from '../../actions/context.ts';
import { exportDocument, previewDocument, replaceDocument } from '../../actions/job-documents.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { listLevels } from '../../actions/levels.ts';
import { archiveProject, changeProject } from '../../actions/projects.ts';
import { refuse } from '../../actions/refused.ts';
import type { BuswayTypeDocument, LevelDocument, ProjectDocument } from '../../document/job-document.ts';
import { parseJsonText } from '../../document/parse-text.ts';
import { readProjectForm, writeProjectForm } from '../../document/project-form.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { fileName } from './csv.ts';
import { attempt, entered, enteredFile, type FormTrouble, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { conflictsOf } from './settings/fragment.ts';

const params = z.object({ jobId: z.string() });
const ALL = { page: 1, limit: 500 } as const;

/** What belongs to the job as a whole: heading, levels, types, document, put away. */
export function settings(app: App, context: Context): void {
  app.get('/jobs/:jobId/settings', { schema: { hide: true, params } }, (request, reply) =>
    show(context, request, reply, request.params.jobId, {}),
  );

  app.post('/jobs/:jobId/settings', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const tried = await attempt(async () => {
      const before = (await jobHeading(context, viewerOf(request), jobId, 'design')).project;
      const project = readProjectForm(entered(request), before) as unknown as ProjectDocument; // the action checks the whole of it
      return changeProject(context, viewerOf(request), jobId, formVersion(request), project);
    });
    if (!tried.ok) return show(context, request, reply, jobId, { heading: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/settings`, 'The heading is saved, and every run is laid out anew with it.');
  });

  app.post('/jobs/:jobId/settings/archived', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const archived = entered(request).archived === 'yes';
    const tried = await attempt(async () =>
      archiveProject(context, viewerOf(request), jobId, formVersion(request), archived),
    );
    if (!tried.ok) return show(context, request, reply, jobId, { other: tried.trouble });
    return goTo(reply, archived ? '/jobs' : `/jobs/${jobId}/settings`, archived ? 'Put away.' : 'Brought back.');
  });

  app.get('/jobs/:jobId/document.json', { schema: { hide: true, params } }, async (request, reply) => {
    const { document } = await exportDocument(context, viewerOf(request), request.params.jobId);
    return reply
      .type('application/json; charset=utf-8')
      .header('content-disposition', `attachment; filename="${fileName(document.project.number)}.json"`)
      .serializer((value: unknown) => JSON.stringify(value, null, 2))
      .send(document);
  });

  app.post('/jobs/:jobId/settings/document', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const source = enteredFile(request, 'file') ?? entered(request).text ?? '';
    const text = typeof source === 'string' ? source : new TextDecoder().decode(source);
    const replaces = entered(request).step === 'replace';
    const tried = await attempt(async () => {
      const read = parseJsonText(source);
      if (!read.ok) return refuse({ code: 'invalid', faults: read.faults });
      const viewer = viewerOf(request);
      return replaces
        ? replaceDocument(context, viewer, jobId, formVersion(request), read.value)
        : previewDocument(context, viewer, jobId, read.value);
    });
    if (!tried.ok) return show(context, request, reply, jobId, { other: tried.trouble, text });
    if (replaces)
      return goTo(
        reply,
        `/jobs/${jobId}/settings#document`,
        `In place: ${tried.value.length} differences are written.`,
      );
    return show(context, request, reply, jobId, { text, differences: tried.value });
  });
}

interface Tried {
  readonly heading?: FormTrouble;
  readonly other?: FormTrouble;
  readonly text?: string;
  readonly differences?: SettingsPageProps['replacing']['differences'];
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  tried: Tried,
): Promise<FastifyReply> {
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId);
  const [levels, types] = await Promise.all([
    listLevels(context, viewer, jobId, ALL),
    listBuswayTypes(context, viewer, jobId, ALL),
  ]);
  const { reached } = heading;
  const trouble = tried.heading ?? tried.other;
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, {
      title: 'Settings',
      part: 'settings',
      trouble,
      tools: SettingsTools({ jobId, audit: reached.may('audit') }),
    }),
    SettingsPage({
      jobId,
      csrf: formToken(reply),
      may: { design: reached.may('design'), members: reached.may('members') },
      version: heading.version,
      designVersion: heading.designVersion,
      archived: heading.archived,
      entered: tried.heading === undefined ? writeProjectForm(heading.project) : entered(request),
      faultOf: (name) => tried.heading?.faultOf(name),
      conflicts:
        tried.heading?.refusal.code === 'stale'
          ? conflictsOf(entered(request), writeProjectForm(heading.project))
          : null,
      levels: levels.items.map(({ id, document }) => ({
        id,
        key: document.id,
        name: document.name,
        conditions: sayConditions(document),
      })),
      types: types.items.map(({ id, document }) => ({
        id,
        key: document.id,
        what: sayType(document),
        sheet: saySheet(document),
      })),
      replacing: {
        text: tried.text ?? '',
        faults: tried.other?.faults ?? [],
        differences: tried.differences ?? null,
      },
    }),
  );
}

function sayConditions({ conditions }: LevelDocument): string {
  const said = [
    `${conditions?.congestion ?? 'open'} ceiling`,
    ...(conditions?.liveArea === true ? ['beside equipment in service'] : []),
    ...(conditions?.storeysAboveGrade ? [sayStoreys(conditions.storeysAboveGrade)] : []),
  ];
  return said.join(', ');
}

function sayStoreys(count: number): string {
  return count === 1 ? 'one storey up' : `${count} storeys up`;
}

function sayType(type: BuswayTypeDocument): string {
  const neutral = type.neutral === 'none' ? 'no neutral' : `${type.neutral} neutral`;
  return `${type.ratedCurrentA} A, ${type.ratedVoltageV} V, ${type.poles} poles, ${neutral}`;
}

function saySheet({ sheet }: BuswayTypeDocument): string {
  return sheet === undefined ? 'not stated' : `${sheet.document}, rev. ${sheet.revision}, ${sheet.date}`;
}
