import type { FastifyReply, FastifyRequest } from 'fastify';
import type { JSX } from 'preact';
import { z } from 'zod';
import type { Context, Viewer } from '../../../actions/context.ts';
import { jobHeading } from '../../../actions/job-heading.ts';
import type { Submission } from '../../../actions/once.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { ProjectDocument } from '../../../document/job-document.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, type Entered, entered, formSubmission, formVersion } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { goTo, sendPage } from '../page.ts';
import { type FragmentTried, fragmentProps } from './fragment.ts';

/** A part of the job that the settings keep as a form of its own: a level, a busway type. */
export interface PartForm<T extends { readonly id: string }> {
  /** Its word in the address, and where the settings list it. */
  readonly at: 'levels' | 'types';
  readonly addTitle: string;
  /** "Level F1". */
  readonly titleOf: (part: T) => string;
  readonly savedWords: (part: T) => string;
  readonly removedWords: string;
  readonly removal: { readonly what: (part: T) => string; readonly question: string };
  readonly wordOf: (field: string) => string;
  /** What a form that nobody has typed into holds. */
  readonly blank: Entered;
  readonly read: (
    fields: Entered,
    project: ProjectDocument,
    before: T | null,
  ) => { readonly part: T; readonly faults: readonly EntryFault[] };
  readonly write: (part: T, project: ProjectDocument) => Entered;
  readonly get: (context: Context, viewer: Viewer, jobId: string, id: string) => Promise<Kept<T>>;
  readonly create: (
    context: Context,
    viewer: Viewer,
    jobId: string,
    part: T,
    submission: Submission | null,
  ) => Promise<unknown>;
  readonly change: (
    context: Context,
    viewer: Viewer,
    jobId: string,
    id: string,
    version: number,
    part: T,
  ) => Promise<unknown>;
  readonly remove: (context: Context, viewer: Viewer, jobId: string, id: string, version: number) => Promise<void>;
  readonly page: (
    props: ReturnType<typeof fragmentProps> & { readonly entered: Entered },
    project: ProjectDocument,
  ) => JSX.Element;
}

interface Kept<T> {
  readonly version: number;
  readonly document: T;
}

const params = z.object({ jobId: z.string(), partId: z.string() });
const NEW = 'new';

/** The addresses of such a form; `new` for a part that is not there yet. */
export function partForm<T extends { readonly id: string }>(app: App, context: Context, part: PartForm<T>): void {
  const path = `/jobs/:jobId/settings/${part.at}/:partId`;
  const settings = (jobId: string) => `/jobs/${jobId}/settings#${part.at}`;

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, part, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, partId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { project } = await jobHeading(context, viewer, jobId, 'design');
    const before = partId === NEW ? null : (await part.get(context, viewer, jobId, partId)).document;
    const { part: read, faults } = part.read(fields, project, before);
    if (faults.length > 0) return show(context, request, reply, part, { fields, faults });
    const tried = await attempt(async () =>
      partId === NEW
        ? part.create(context, viewer, jobId, read, formSubmission(request))
        : part.change(context, viewer, jobId, partId, formVersion(request), read),
    );
    if (!tried.ok) return show(context, request, reply, part, { fields, faults: [], trouble: tried.trouble });
    return goTo(reply, settings(jobId), part.savedWords(read));
  });

  app.post(`${path}/removal`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, partId } = request.params;
    const tried = await attempt(async () =>
      part.remove(context, viewerOf(request), jobId, partId, formVersion(request)),
    );
    if (!tried.ok) return show(context, request, reply, part, { fields: {}, faults: [], trouble: tried.trouble });
    return goTo(reply, settings(jobId), part.removedWords);
  });
}

async function show<T extends { readonly id: string }>(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  part: PartForm<T>,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId, partId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'design');
  const current = partId === NEW ? null : await part.get(context, viewer, jobId, partId);
  const now = current === null ? null : part.write(current.document, heading.project);
  const settings = `/jobs/${jobId}/settings`;
  const path = `${settings}/${part.at}/${partId}`;
  const isTyped = tried !== null && Object.keys(tried.fields).length > 0;
  const props = fragmentProps(context, request, reply, {
    path,
    settings: `${settings}#${part.at}`,
    version: current?.version ?? null,
    tried,
    wordOf: part.wordOf,
    units: heading.project.units,
    now,
    removal:
      current === null
        ? null
        : { action: `${path}/removal`, what: part.removal.what(current.document), question: part.removal.question },
  });
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: current === null ? part.addTitle : part.titleOf(current.document),
        part: 'settings',
        trouble: tried?.trouble,
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    part.page({ ...props, entered: isTyped ? tried.fields : (now ?? part.blank) }, heading.project),
  );
}
