import { Readable } from 'node:stream';
import { z } from 'zod';
import type { ChangeFeed } from '../../actions/changes.ts';
import type { Context } from '../../actions/context.ts';
import { reach } from '../../actions/reach.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';

const BEAT_MS = 20_000;
/** A change that was being written while the page was read may carry a time a little before the page's. */
const OVERLAP_MS = 2_000;

/** Server-sent events of one job: a named message whenever anybody changed it. Pages then fetch their own part again. */
export function events(app: App, context: Context, feed: ChangeFeed): void {
  app.get(
    '/jobs/:jobId/events',
    {
      schema: {
        hide: true,
        params: z.object({ jobId: z.string() }),
        querystring: z.object({ asOf: z.iso.datetime().optional().catch(undefined) }),
      },
    },
    async (request, reply) => {
      const { projectId } = await reach(context.database.db, viewerOf(request), request.params.jobId);
      const head = await lastChange(context, projectId);
      const missed = hasMissed(head, request.headers['last-event-id'], request.query.asOf);
      const stream = new Readable({ read() {} });
      const stop = feed.watch(projectId, head.seq, (seq) => stream.push(changed(seq)));
      const beat = setInterval(() => stream.push(': still here\n\n'), BEAT_MS);
      stream.on('close', () => {
        clearInterval(beat);
        stop();
      });
      request.raw.on('close', () => stream.destroy());
      stream.push(`retry: 2000\nid: ${head.seq}\n: watching\n\n`);
      if (missed) stream.push(changed(head.seq));
      return reply
        .header('content-type', 'text/event-stream')
        .header('cache-control', 'no-cache, no-transform')
        .header('x-accel-buffering', 'no')
        .send(stream);
    },
  );
}

function changed(seq: number): string {
  return `id: ${seq}\nevent: job-changed\ndata: ${seq}\n\n`;
}

interface Head {
  readonly seq: number;
  readonly at: Date | null;
}

async function lastChange(context: Context, projectId: string): Promise<Head> {
  const last = await context.database.db.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { seq: true, at: true },
  });
  return last ?? { seq: 0, at: null };
}

/** Whether the job changed after the page was read and before it listened, or while the line was down. */
function hasMissed(head: Head, lastEventId: unknown, asOf: string | undefined): boolean {
  if (typeof lastEventId === 'string' && /^\d+$/.test(lastEventId)) return head.seq > Number(lastEventId);
  return asOf !== undefined && head.at !== null && head.at.getTime() >= Date.parse(asOf) - OVERLAP_MS;
}
