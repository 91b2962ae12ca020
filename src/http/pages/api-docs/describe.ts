import type { ApiField, ApiGroup, ApiOperation, ApiShape } from '../../../../views/pages/api-docs.tsx';
import type { OpenApiDocument, Operation, Schema } from './open-api.ts';
import { refName, sayType } from './say-type.ts';

/** Deeper than this, a field says what it is and no more. */
const DEEPEST = 3;
const METHODS = ['get', 'post', 'put', 'patch', 'delete'] as const;

/** The API by subject, in words: what each request does, what it takes and what it answers. */
export function describeApi({ paths, components }: OpenApiDocument): {
  readonly groups: readonly ApiGroup[];
  readonly shapes: readonly ApiShape[];
} {
  const groups = new Map<string, ApiOperation[]>();
  for (const [path, methods] of Object.entries(paths))
    for (const method of METHODS) {
      const operation = methods[method];
      if (operation === undefined) continue;
      const tag = operation.tags?.[0] ?? 'Other';
      const group = groups.get(tag);
      const described = describe(method, path, operation);
      if (group) group.push(described);
      else groups.set(tag, [described]);
    }
  const shapes = Object.entries(components?.schemas ?? {})
    .filter(([name]) => !name.endsWith('Input'))
    .map(([name, schema]) => ({ name, about: schema.description ?? '', fields: fieldsOf(schema, 0) }));
  return { groups: [...groups].map(([name, operations]) => ({ name, operations })), shapes };
}

function describe(method: string, path: string, operation: Operation): ApiOperation {
  const { summary = '', description = '', parameters = [], requestBody, responses = {} } = operation;
  const body = schemaOf(requestBody?.content);
  return {
    method: method.toUpperCase(),
    path,
    summary,
    description,
    parameters: parameters.map((parameter) => ({
      name: parameter.name,
      where: parameter.in,
      needed: parameter.required === true,
      type: sayType(parameter.schema ?? {}),
      about: parameter.description ?? parameter.schema?.description ?? '',
    })),
    body: body === null ? null : { type: sayType(body), shape: refName(body), fields: fieldsOf(body, 0) },
    answers: Object.entries(responses)
      .filter(([status]) => status.startsWith('2'))
      .map(([status, response]) => {
        const schema = schemaOf(response.content);
        if (schema === null) return { status, type: 'nothing', shape: null, fields: [] };
        return { status, type: sayType(schema), shape: refName(schema), fields: fieldsOf(schema, 0) };
      }),
  };
}

function schemaOf(content: NonNullable<Operation['requestBody']>['content']): Schema | null {
  return Object.values(content ?? {})[0]?.schema ?? null;
}

/** The fields of an object, or of the things in a list. A named shape is described once, at its own place. */
function fieldsOf(schema: Schema, depth: number): ApiField[] {
  const inner = innerOf(schema);
  if (inner === null || depth >= DEEPEST) return [];
  const needed = new Set(inner.required ?? []);
  return Object.entries(inner.properties ?? {}).map(([name, field]) => ({
    name,
    needed: needed.has(name),
    type: sayType(field),
    shape: refName(field),
    about: field.description ?? '',
    fields: fieldsOf(field, depth + 1),
  }));
}

function innerOf(schema: Schema): Schema | null {
  if (schema.$ref !== undefined) return null;
  if (schema.properties !== undefined) return schema;
  if (schema.items !== undefined) return innerOf(schema.items);
  const choices = (schema.anyOf ?? schema.oneOf ?? []).filter((choice) => choice.type !== 'null');
  return choices.length === 1 && choices[0] !== undefined ? innerOf(choices[0]) : null;
}
