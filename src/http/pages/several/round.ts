import type { FastifyReply, FastifyRequest } from 'fastify';
import type { JSX } from 'preact';
import type { SeveralFormProps } from '../../../../views/pages/several/several-form.tsx';
import type { Context, Viewer } from '../../../actions/context.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import type { Submission } from '../../../actions/once.ts';
import type { Seen } from '../../../actions/several/seen.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { JobDocument } from '../../../document/job-document.ts';
import type { App } from '../../app-type.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, type Entered, type FormTrouble, formSubmission } from '../form.ts';
import { goTo } from '../page.ts';
import { firstRuns, jobParams, runsQuery, seenIn, sendSeveral, severalPath } from './sheet.ts';
import { faultOfField, faultsBeside, summaryOf, type Typed, typedIn } from './typed.ts';

/** What is done to several runs at once: asked for by a form, shown before it is written, then written. */
export interface Round<Asked, Preview> {
  readonly name: 'copies' | 'partners' | 'changes';
  /** What a form that nobody has typed into holds. */
  readonly fresh: Entered;
  readonly title: (runs: readonly string[]) => string;
  /** Names of the fields, for the list of what is to be put right. */
  readonly words: Readonly<Record<string, string>>;
  /** The field that a path of what is asked was typed into; the path itself when absent. */
  readonly fieldOf?: (path: string) => string;
  readonly read: (typed: Typed, job: JobDocument) => { readonly asked: Asked; readonly faults: readonly EntryFault[] };
  readonly preview: (context: Context, viewer: Viewer, jobId: string, asked: Asked) => Promise<Preview>;
  /** Writes it and gives the sentence that says what was done. */
  readonly write: (
    context: Context,
    viewer: Viewer,
    jobId: string,
    asked: Asked,
    seen: Seen,
    submission: Submission | null,
  ) => Promise<string>;
  readonly page: (shown: Shown<Preview>) => JSX.Element | Promise<JSX.Element>;
}

/** What a page is drawn from. */
export interface Shown<Preview> {
  readonly context: Context;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
  readonly jobId: string;
  readonly job: JobDocument;
  readonly typed: Typed;
  readonly form: SeveralFormProps;
  /** Where the preview's button posts to. */
  readonly writePath: string;
  readonly preview: Preview | undefined;
}

/** The addresses of a round: the form, its preview, and the writing. */
export function roundRoutes<Asked, Preview>(app: App, context: Context, round: Round<Asked, Preview>): void {
  const path = `/jobs/:jobId/runs/several/${round.name}`;

  app.get(path, { schema: { hide: true, params: jobParams, querystring: runsQuery } }, async (request, reply) => {
    const runs = await firstRuns(context, request, request.params.jobId, request.query);
    return showRound(context, request, reply, round, { fields: round.fresh, runs, levels: [] });
  });

  app.post(path, { schema: { hide: true, params: jobParams } }, (request, reply) =>
    previewed(context, request, reply, round),
  );

  app.post(`${path}/made`, { schema: { hide: true, params: jobParams } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const { asked, faults } = round.read(typedIn(request), await jobParts(context, viewer, jobId));
    if (faults.length > 0) return previewed(context, request, reply, round);
    const tried = await attempt(() =>
      round.write(context, viewer, jobId, asked, seenIn(request), formSubmission(request)),
    );
    if (!tried.ok) return previewed(context, request, reply, round, tried.trouble);
    return goTo(reply, `/jobs/${jobId}/floors`, tried.value);
  });
}

async function previewed<Asked, Preview>(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  round: Round<Asked, Preview>,
  refused?: FormTrouble,
): Promise<FastifyReply> {
  const { jobId } = jobParams.parse(request.params);
  const viewer = viewerOf(request);
  const typed = typedIn(request);
  const { asked, faults } = round.read(typed, await jobParts(context, viewer, jobId));
  if (faults.length > 0) return showRound(context, request, reply, round, typed, { read: faults });
  const tried = await attempt(() => round.preview(context, viewer, jobId, asked));
  return showRound(
    context,
    request,
    reply,
    round,
    typed,
    tried.ok ? { preview: tried.value, trouble: refused } : { trouble: tried.trouble },
  );
}

interface Tried<Preview> {
  readonly read?: readonly EntryFault[];
  readonly trouble?: FormTrouble | undefined;
  readonly preview?: Preview;
}

/** The form, with what came of it. */
export async function showRound<Asked, Preview>(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  round: Round<Asked, Preview>,
  typed: Typed,
  { read = [], trouble, preview }: Tried<Preview> = {},
): Promise<FastifyReply> {
  const { jobId } = jobParams.parse(request.params);
  const job = await jobParts(context, viewerOf(request), jobId);
  const path = severalPath(jobId, round.name);
  const faults = faultsBeside(read, trouble, round.fieldOf);
  const form: SeveralFormProps = {
    action: `${path}#preview`,
    csrf: formToken(reply),
    pickHref: severalPath(jobId),
    runs: typed.runs,
    entered: { ...typed.fields },
    faultOf: faultOfField(faults),
    summary: summaryOf(faults, (field) => round.words[field] ?? field),
  };
  return sendSeveral(context, request, reply, jobId, {
    title: round.title(typed.runs),
    isRefused: faults.length > 0,
    trouble,
    content: await round.page({
      context,
      request,
      reply,
      jobId,
      job,
      typed,
      form,
      writePath: `${path}/made`,
      preview,
    }),
  });
}
