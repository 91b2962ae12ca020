import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Viewer } from '../../../actions/context.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { App } from '../../app-type.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, type Entered, entered, formVersion } from '../form.ts';
import { goTo } from '../page.ts';
import type { FragmentTried } from './fragment.ts';

/** A page that is one form of the job: shown, read, saved on the version it was made from. */
export interface OneForm<T> {
  /** Behind `/jobs/:jobId`. */
  readonly path: string;
  readonly read: (
    viewer: Viewer,
    jobId: string,
    fields: Entered,
  ) => Promise<{ readonly fields: Entered; readonly faults: readonly EntryFault[]; readonly value: T }>;
  readonly save: (viewer: Viewer, jobId: string, version: number, value: T) => Promise<unknown>;
  /** Where the saved form leads, behind `/jobs/:jobId`, and the sentence said there. */
  readonly saved: { readonly path: string; readonly words: string };
  readonly show: (
    request: FastifyRequest,
    reply: FastifyReply,
    jobId: string,
    tried: FragmentTried | null,
  ) => Promise<FastifyReply>;
}

const params = z.object({ jobId: z.string() });

/** Its addresses. What was typed stays in the form when it is refused. */
export function oneForm<T>(app: App, { path, read, save, saved, show }: OneForm<T>): void {
  const at = `/jobs/:jobId${path}`;

  app.get(at, { schema: { hide: true, params } }, (request, reply) => show(request, reply, request.params.jobId, null));

  app.post(at, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const { fields, faults, value } = await read(viewer, jobId, entered(request));
    if (faults.length > 0) return show(request, reply, jobId, { fields, faults });
    const tried = await attempt(async () => save(viewer, jobId, formVersion(request), value));
    if (!tried.ok) return show(request, reply, jobId, { fields, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}${saved.path}`, saved.words);
  });
}
