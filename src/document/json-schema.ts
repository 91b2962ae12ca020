import { z } from 'zod';
import { DOCUMENT_FORMAT, jobDocumentSchema } from './schema/document.ts';

/**
 * The JSON Schema (draft 2020-12) of the job document, for editors and for programs that write one. It fixes names, types
 * and ranges; what no schema can say - that a run's level exists, that hours stand in order - is in `parseJobDocument`.
 */
export function jobDocumentJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(jobDocumentSchema, { target: 'draft-2020-12' });
  return { $schema, title: `Job document ${DOCUMENT_FORMAT}`, ...rest };
}

/** The published file's text. */
export function writeJsonSchema(): string {
  return `${JSON.stringify(jobDocumentJsonSchema(), null, 2)}\n`;
}
