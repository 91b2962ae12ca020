/** What the page reads of an OpenAPI 3.1 document. */
export interface OpenApiDocument {
  readonly info: { readonly title: string; readonly version: string; readonly description?: string };
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components?: { readonly schemas?: Readonly<Record<string, Schema>> };
}

export interface Operation {
  readonly tags?: readonly string[];
  readonly summary?: string;
  readonly description?: string;
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: { readonly content?: Content };
  readonly responses?: Readonly<Record<string, { readonly content?: Content }>>;
}

export interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly required?: boolean;
  readonly description?: string;
  readonly schema?: Schema;
}

type Content = Readonly<Record<string, { readonly schema?: Schema }>>;

export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly additionalProperties?: boolean | Schema;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly maxLength?: number;
  readonly format?: string;
  readonly default?: unknown;
}

/** The document that the server made of its own schemas. */
export function parseOpenApi(document: unknown): OpenApiDocument {
  if (typeof document !== 'object' || document === null || !('paths' in document))
    throw new Error('the API description has no paths');
  return document as OpenApiDocument;
}
