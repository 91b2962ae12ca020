import { Prisma } from '../../gen/sqlite/client.ts';
import type { Database, Reader } from './database.ts';
import { kindOf } from './database-kind.ts';

export type ModelName = Prisma.ModelName;
type CreateRow<M extends ModelName> = Exclude<
  Prisma.TypeMap['model'][M]['operations']['createMany']['args']['data'],
  undefined | readonly unknown[]
>;
/** One row as Prisma's own createMany takes it, but a JSON column takes any value that JSON.stringify can write. */
export type NewRow<M extends ModelName> = {
  readonly [C in keyof CreateRow<M>]: Prisma.InputJsonObject extends CreateRow<M>[C] ? unknown : CreateRow<M>[C];
};

type ColumnKind = 'text' | 'int' | 'real' | 'bool' | 'json' | 'datetime';
type Column = { readonly name: string; readonly kind: ColumnKind };

// Large enough that the statement's own cost vanishes, small enough that a chunk's text stays within some megabytes.
const ROWS_PER_STATEMENT = 2_000;

/**
 * Inserts many rows of one model with few statements: the rows go over as one JSON text that the database itself takes
 * apart. Prisma's createMany does the same about twenty times slower.
 *
 * A column that no row names gets its default; one that only some rows name is null in the others. A key that is
 * taken throws like any other write (`isUniqueViolation`).
 */
export async function insertMany<M extends ModelName>(tx: Reader, model: M, rows: readonly NewRow<M>[]): Promise<void> {
  if (rows.length === 0) return;
  const columns = columnsOf(tx, model, rows);
  const statement = statements[kindOf(tx)](model, columns);
  for (let from = 0; from < rows.length; from += ROWS_PER_STATEMENT) {
    const chunk = rows.slice(from, from + ROWS_PER_STATEMENT).map((row) => encodeRow(columns, row));
    await tx.$executeRawUnsafe(statement, JSON.stringify(chunk));
  }
}

/**
 * Updates many rows of one model by their id, with few statements and in the same manner. Every row names the same columns.
 */
export async function updateMany<M extends ModelName>(
  tx: Reader,
  model: M,
  rows: readonly (Partial<NewRow<M>> & { readonly id: string })[],
): Promise<void> {
  if (rows.length === 0) return;
  const columns = columnsOf(tx, model, rows);
  const statement = updates[kindOf(tx)](model, columns);
  for (let from = 0; from < rows.length; from += ROWS_PER_STATEMENT) {
    const chunk = rows.slice(from, from + ROWS_PER_STATEMENT).map((row) => encodeRow(columns, row));
    await tx.$executeRawUnsafe(statement, JSON.stringify(chunk));
  }
}

function columnsOf(tx: Reader, model: ModelName, rows: readonly object[]): readonly Column[] {
  const names = new Set(rows.flatMap((row) => Object.keys(row)));
  return [...names].map((name) => ({ name, kind: columnKind(tx, model, name) }));
}

// Prisma tells the type of each of its columns, so a new one needs nothing here.
function columnKind(tx: Reader, model: ModelName, name: string): ColumnKind {
  const delegate: unknown = Reflect.get(tx, model.charAt(0).toLowerCase() + model.slice(1));
  const typeName = property(property(property(delegate, 'fields'), name), 'typeName');
  switch (typeName) {
    case 'String':
      return 'text';
    case 'Int':
      return 'int';
    case 'Float':
      return 'real';
    case 'Boolean':
      return 'bool';
    case 'Json':
      return 'json';
    case 'DateTime':
      return 'datetime';
    default:
      throw new Error(
        `insertMany cannot write ${model}.${name}: ${typeName === undefined ? 'no such column' : typeName}.`,
      );
  }
}

function property(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, name) : undefined;
}

function encodeRow(columns: readonly Column[], row: object): Record<string, unknown> {
  return Object.fromEntries(columns.map(({ name, kind }) => [name, encode(kind, Reflect.get(row, name))]));
}

// The same text for both databases. JSON goes as text inside the text, so that a stored JSON null stays apart from no
// value at all.
function encode(kind: ColumnKind, value: unknown): unknown {
  if (value === undefined || value === null || value === Prisma.DbNull) return null;
  if (kind === 'json') return JSON.stringify(value === Prisma.JsonNull ? null : value);
  if (kind === 'datetime') return dateText(value);
  return value;
}

// Exactly the form that the SQLite adapter writes, because SQLite compares dates as text.
function dateText(value: unknown): string {
  const date = value instanceof Date ? value : new Date(String(value));
  return date.toISOString().replace('Z', '+00:00');
}

const statements: Record<Database['kind'], (model: ModelName, columns: readonly Column[]) => string> = {
  sqlite: (model, columns) =>
    `INSERT INTO ${quote(model)} (${columns.map(({ name }) => quote(name)).join(', ')})
     SELECT ${columns.map(({ name }) => `json_extract(value, '$.${quote(name)}')`).join(', ')} FROM json_each(?)`,
  postgres: (model, columns) =>
    `INSERT INTO ${quote(model)} (${columns.map(({ name }) => quote(name)).join(', ')})
     SELECT ${columns.map(postgresValue).join(', ')}
     FROM json_to_recordset($1::json) AS incoming(${columns.map(postgresColumn).join(', ')})`,
};

const updates: typeof statements = {
  sqlite: (model, columns) =>
    `UPDATE ${quote(model)} SET ${columns
      .filter(({ name }) => name !== 'id')
      .map(({ name }) => `${quote(name)} = json_extract(incoming.value, '$.${quote(name)}')`)
      .join(', ')} FROM json_each(?) AS incoming
     WHERE ${quote(model)}."id" = json_extract(incoming.value, '$."id"')`,
  postgres: (model, columns) =>
    `UPDATE ${quote(model)} SET ${columns
      .filter(({ name }) => name !== 'id')
      .map((column) => `${quote(column.name)} = incoming.${postgresValue(column)}`)
      .join(', ')} FROM json_to_recordset($1::json) AS incoming(${columns.map(postgresColumn).join(', ')})
     WHERE ${quote(model)}."id" = incoming."id"`,
};

const postgresTypes: Record<ColumnKind, string> = {
  text: 'text',
  int: 'integer',
  real: 'double precision',
  bool: 'boolean',
  json: 'text',
  datetime: 'timestamp(3)', // without a zone, as Prisma makes it: the offset +00:00 is dropped
};

function postgresColumn({ name, kind }: Column): string {
  return `${quote(name)} ${postgresTypes[kind]}`;
}

function postgresValue({ name, kind }: Column): string {
  return kind === 'json' ? `${quote(name)}::jsonb` : quote(name);
}

// Names come from the schema alone (`columnKind` refuses others), and none holds a quotation mark.
function quote(name: string): string {
  return `"${name}"`;
}
