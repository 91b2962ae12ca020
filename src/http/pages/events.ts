import { Readable } from 'node:stream';
import { z } from 'zod';
import type { ChangeFeed } from '../../actions/changes.ts';
import type { Context } from '../../actions/context.ts';
import { reach } from '../../actions/reach.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';

const BEAT_MS = 20_000;

/** Server-sent events of one job: a named message whenever anybody changed it. Pages then fetch their own part again. */
export function events(app: App, context: Context, feed: ChangeFeed): void {
  app.get(
    '/jobs/:jobId/events',
    { schema: { hide: true, params: z.object({ jobId: z.string() }) } },
    async (request, reply) => {
      const { projectId } = await reach(context.database.db, viewerOf(request), request.params.jobId);
      const stream = new Readable({ read() {} });
      const stop = feed.watch(projectId, (seq) => stream.push(`id: ${seq}\nevent: job-changed\ndata: ${seq}\n\n`));
      const beat = setInterval(() => stream.push(': still here\n\n'), BEAT_MS);
      stream.on('close', () => {
        clearInterval(beat);
        stop();
      });
      request.raw.on('close', () => stream.destroy());
      stream.push('retry: 2000\n: watching\n\n');
      return reply
        .header('content-type', 'text/event-stream')
        .header('cache-control', 'no-cache, no-transform')
        .header('x-accel-buffering', 'no')
        .send(stream);
    },
  );
}
