import type { FastifyReply } from 'fastify';
import type { buildCloseout } from '../actions/closeouts.ts';

/** Sends a package as it is made; one that breaks off ends the connection, so that half a package never looks whole. */
export function sendCloseout(
  reply: FastifyReply,
  { fileName, stream }: Awaited<ReturnType<typeof buildCloseout>>,
): FastifyReply {
  return reply
    .type('application/zip')
    .header('content-disposition', `attachment; filename="${fileName}"`)
    .header('cache-control', 'no-store')
    .send(stream);
}
