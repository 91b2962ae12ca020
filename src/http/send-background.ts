import type { FastifyReply } from 'fastify';

/** Of an address that changes with the picture: a week. */
export const KEPT_A_WEEK = 'private, max-age=604800, immutable';
/** Of one that stays: ask each time. */
export const ASKED_ANEW = 'private, no-cache';

/** Sends the picture under a plan as what it is, a PNG made here, to be kept by the reader's own browser alone. */
export function sendBackground(
  reply: FastifyReply,
  { picture, sha256 }: { readonly picture: Uint8Array; readonly sha256: string },
  kept: typeof KEPT_A_WEEK | typeof ASKED_ANEW,
): FastifyReply {
  return reply
    .type('image/png')
    .header('cache-control', kept)
    .header('etag', `"${sha256}"`)
    .header('content-disposition', 'inline; filename="picture.png"')
    .send(Buffer.from(picture));
}
