import type { z } from 'zod';
import type { Fault, PathPart } from './fault.ts';
import { type Salvaged, salvage } from './parsing/salvaged.ts';
import { placeOf, shapeFaults } from './parsing/shape-faults.ts';
import { ruleFaults } from './rules/rule-faults.ts';
import { type JobDocument, jobDocumentSchema } from './schema/document.ts';

export type ParsedJobDocument =
  | { readonly ok: true; readonly document: JobDocument }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Checks a value against the job document's schema and rules and gives all faults at once, in the order of their
 * paths. A document that passes is the one that came in: nothing is rounded, added or left out.
 */
export function parseJobDocument(input: unknown): ParsedJobDocument {
  const shape = jobDocumentSchema.safeParse(input);
  if (shape.success) {
    const faults = ruleFaults(shape.data);
    return faults.length === 0 ? { ok: true, document: shape.data } : { ok: false, faults: inOrder(faults) };
  }
  const { issues } = shape.error;
  // The cast is what `salvage` is for: every value that the schema did not find well shaped is gone.
  const rest = salvage(input, issues.map(brokenPart)) as Salvaged<JobDocument> | undefined;
  const faults = [...shapeFaults(jobDocumentSchema, issues, input), ...ruleFaults(rest ?? {})];
  return { ok: false, faults: inOrder(faults) };
}

/** What a schema issue leaves unchecked: the value itself, or the whole union whose kind could not be told. */
function brokenPart(issue: z.core.$ZodIssue): PathPart[] {
  const path = placeOf(issue);
  if (issue.code === 'unrecognized_keys') return [...path, issue.keys[0] ?? ''];
  return issue.code === 'invalid_union' ? path.slice(0, -1) : path;
}

const byPath = new Intl.Collator('en', { numeric: true });

function inOrder(faults: readonly Fault[]): Fault[] {
  return [...faults].sort((a, b) => byPath.compare(a.path, b.path));
}
