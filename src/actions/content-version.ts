import { createHash } from 'node:crypto';
import { canonicalJson } from '../domain/canonical-json.ts';

/**
 * The version of something that is a column of the project, whose own version counts other things: read off what it says,
 * so equal contents have equal versions. At least 1.
 */
export function contentVersion(content: unknown): number {
  return createHash('sha256').update(canonicalJson(content)).digest().readUInt32BE(0) + 1;
}
