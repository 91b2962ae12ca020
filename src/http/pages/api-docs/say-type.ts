import type { Schema } from './open-api.ts';

/** Larger bounds are only those of the number itself. */
const LARGE = 2 ** 52;

/** What a value is, in words: `sayType({ type: 'integer', minimum: 1, maximum: 500 }) = 'whole number, 1 to 500'`. */
export function sayType(schema: Schema): string {
  const name = refName(schema);
  if (name !== null) return isList(schema) ? `list of ${name}` : name;
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.enum !== undefined) return `one of ${schema.enum.map((one) => JSON.stringify(one)).join(', ')}`;
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices !== undefined) return [...new Set(choices.map(sayType))].join(' or ');
  if (schema.allOf !== undefined) return schema.allOf.map(sayType).join(' and ');
  const types = typeof schema.type === 'string' ? [schema.type] : (schema.type ?? []);
  if (types.length === 0) return 'anything';
  return types.map((type) => sayOne(type, schema)).join(' or ');
}

function sayOne(type: string, schema: Schema): string {
  switch (type) {
    case 'string':
      return schema.format === undefined ? 'text' : `text (${schema.format})`;
    case 'integer':
      return `whole number${sayRange(schema)}`;
    case 'number':
      return `number${sayRange(schema)}`;
    case 'boolean':
      return 'true or false';
    case 'array':
      return `list of ${sayType(schema.items ?? {})}`;
    case 'null':
      return 'null';
    default:
      return typeof schema.additionalProperties === 'object'
        ? `object of ${sayType(schema.additionalProperties)}, by name`
        : 'object';
  }
}

function sayRange({ minimum, maximum }: Schema): string {
  const low = minimum === undefined || Math.abs(minimum) > LARGE ? null : minimum;
  const high = maximum === undefined || Math.abs(maximum) > LARGE ? null : maximum;
  if (low !== null && high !== null) return `, ${low} to ${high}`;
  if (low !== null) return `, ${low} or more`;
  return high === null ? '' : `, ${high} or less`;
}

/** The named shape that a schema, or the things of its list, refer to. */
export function refName(schema: Schema): string | null {
  const ref = schema.$ref ?? (isList(schema) ? schema.items?.$ref : undefined);
  return ref === undefined ? null : (ref.split('/').at(-1) ?? '').replace(/Input$/, '');
}

function isList(schema: Schema): boolean {
  return schema.type === 'array' || schema.items !== undefined;
}
