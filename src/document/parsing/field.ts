import { z } from 'zod';
import type { PathPart } from '../fault.ts';

/** The schema that a path leads to, without its optional and nullable wrappers; undefined where the path leaves it. */
export function fieldAt(schema: z.ZodType, path: readonly PathPart[]): z.ZodType | undefined {
  let at: z.ZodType | undefined = unwrap(schema);
  for (const part of path) at = at && step(at, part);
  return at;
}

/** The keys an object of the schema may have; none where it is not an object. */
export function keysOf(schema: z.ZodType | undefined): string[] {
  if (schema instanceof z.ZodObject) return Object.keys(schema.shape);
  if (schema instanceof z.ZodDiscriminatedUnion)
    return [...new Set(schema.options.flatMap((one) => keysOf(asType(one))))];
  return [];
}

function step(schema: z.ZodType, part: PathPart): z.ZodType | undefined {
  if (schema instanceof z.ZodObject) return unwrap(asType(schema.shape[part]));
  if (schema instanceof z.ZodArray) return unwrap(asType(schema.element));
  if (schema instanceof z.ZodRecord) return unwrap(asType(schema.valueType));
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return undefined;
  const option = schema.options.map(asType).find((one) => keysOf(one).includes(String(part)));
  return option && step(option, part);
}

function unwrap(schema: z.ZodType | undefined): z.ZodType | undefined {
  let at = schema;
  while (at instanceof z.ZodOptional || at instanceof z.ZodNullable) at = asType(at.unwrap());
  return at;
}

function asType(schema: unknown): z.ZodType | undefined {
  return schema instanceof z.ZodType ? schema : undefined;
}
