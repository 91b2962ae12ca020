import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Submission } from '../../actions/once.ts';
import { refuse } from '../../actions/refused.ts';
import { problemSchema } from '../problem.ts';

/** What every route of the API shares: versions as ETags, keys for creates, problems for refusals. */
export const problems = { '4xx': problemSchema, '5xx': problemSchema };

export const projectParams = z.object({ projectId: z.string() });
export const itemParams = z.object({ projectId: z.string(), id: z.string() });

export const createHeaders = z.looseObject({
  'idempotency-key': z
    .string()
    .min(1)
    .max(200)
    .optional()
    .describe('The same key with the same request gives the first answer again.'),
});
export const changeHeaders = z.looseObject({
  'if-match': z
    .string()
    .optional()
    .describe('The ETag you read. Needed; a newer reading in the record gives 412 with what stands there.'),
});

/** Puts a version on an answer as a strong ETag. */
export function stamp(reply: FastifyReply, version: number): void {
  reply.header('etag', `"${version}"`);
}

/** The version that the caller read. */
export function readVersion(request: FastifyRequest): number {
  const sent = request.headers['if-match'];
  if (sent === undefined) refuse({ code: 'version-needed' });
  const version = /^(?:W\/)?"?(\d+)"?$/.exec(sent.trim())?.[1];
  return version === undefined ? refuse({ code: 'version-needed' }) : Number(version);
}

/** The caller's key for one create, with what it was sent for. */
export function readSubmission(request: FastifyRequest): Submission | null {
  const key = request.headers['idempotency-key'];
  if (typeof key !== 'string' || key === '') return null;
  return { key, request: { method: request.method, url: request.url, body: request.body ?? null } };
}
