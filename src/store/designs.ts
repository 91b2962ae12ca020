import type {
  BuswayTypeDocument,
  JobDocument,
  LevelDocument,
  ProjectDocument,
  RunDocument,
} from '../document/job-document.ts';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Reader, Tx } from './database.ts';
import { inChunks } from './in-chunks.ts';
import { insertMany, updateMany } from './insert-many.ts';

/** Which runs of a design to read: all, or those with these keys. */
export type Scope = 'all' | readonly string[];

/** The design as one job document, in document order. With a list of runs it holds those runs alone beside everything they refer to. */
export async function readDesign(reader: Reader, projectId: string, scope: Scope = 'all'): Promise<JobDocument> {
  // One after the other: inside a transaction there is one connection, and it takes one question at a time.
  const frame = await readFrame(reader, projectId);
  const runs =
    scope === 'all'
      ? await reader.run.findMany({ ...inOrder(projectId), select: { spec: true } })
      : await readRuns(reader, projectId, scope);
  return designDocument(
    frame,
    runs.map((row) => row.spec as unknown as RunDocument),
  );
}

/** A design's parts in the order that the job document has them. */
export function designDocument(frame: Omit<JobDocument, 'runs'>, runs: JobDocument['runs']): JobDocument {
  const { format, project, levels, buswayTypes, ...rest } = frame;
  return { format, project, levels, buswayTypes, runs, ...rest };
}

/** Everything of a design but its runs. */
export async function readFrame(reader: Reader, projectId: string): Promise<Omit<JobDocument, 'runs'>> {
  const project = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { spec: true, extras: true, bid: true },
  });
  const levels = await reader.level.findMany({ ...inOrder(projectId), select: { spec: true } });
  const types = await reader.buswayType.findMany({ ...inOrder(projectId), select: { spec: true } });
  const book = await reader.labourBook.findUnique({ where: { projectId }, select: { spec: true } });
  const extras = project.extras as unknown as JobDocument['extras'];
  return {
    format: 'busway-jobbook/1',
    project: project.spec as unknown as ProjectDocument,
    levels: levels.map((row) => row.spec as unknown as LevelDocument),
    buswayTypes: types.map((row) => row.spec as unknown as BuswayTypeDocument),
    ...(extras === undefined || extras === null || extras.length === 0 ? {} : { extras }),
    ...(book === null ? {} : { labourBook: book.spec as unknown as JobDocument['labourBook'] }),
    ...(project.bid === null ? {} : { bid: project.bid as unknown as JobDocument['bid'] }),
  };
}

const inOrder = (projectId: string) => ({
  where: { projectId },
  orderBy: [{ ordinal: 'asc' as const }, { key: 'asc' as const }],
});

/** A run as it stands in the design; its version grows with every change of its document or its layout. */
export interface StoredRun {
  readonly id: string;
  readonly version: number;
  readonly document: RunDocument;
  readonly layout: RunLayout;
}

/** Every run of a design with its layout, in document order. Of `known` rows only those are read again that have changed. */
export async function readStoredRuns(
  reader: Reader,
  projectId: string,
  known: readonly StoredRun[],
): Promise<readonly StoredRun[]> {
  if (known.length === 0) return storedRuns(reader, { projectId });
  const marks = await reader.run.findMany({ ...inOrder(projectId), select: { id: true, version: true } });
  const standing = new Map(known.map((run) => [run.id, run]));
  const stale = marks.filter(({ id, version }) => standing.get(id)?.version !== version);
  if (stale.length > MOST_PICKED) return storedRuns(reader, { projectId });
  if (stale.length > 0) {
    const read = await storedRuns(reader, { id: { in: stale.map(({ id }) => id) } });
    for (const run of read) standing.set(run.id, run);
  }
  return marks.flatMap(({ id }) => standing.get(id) ?? []);
}

/** More runs than this are not picked out one by one. */
const MOST_PICKED = 400;

async function storedRuns(
  reader: Reader,
  where: { projectId: string } | { id: { in: string[] } },
): Promise<readonly StoredRun[]> {
  const rows = await reader.run.findMany({
    ...inOrder(''),
    where,
    select: { id: true, version: true, spec: true, layout: true },
  });
  return rows.map(({ id, version, spec, layout }) => ({
    id,
    version,
    document: spec as unknown as RunDocument,
    layout: layout as unknown as RunLayout,
  }));
}

/** In document order, which holds over all the questions that so many keys may take. */
async function readRuns(reader: Reader, projectId: string, keys: readonly string[]) {
  const rows = await inChunks(keys, (chunk) =>
    reader.run.findMany({ where: { projectId, key: { in: chunk } }, select: { ordinal: true, spec: true } }),
  );
  return rows.sort((a, b) => a.ordinal - b.ordinal);
}

/** A row that changes its name keeps its identity. */
export interface Rename {
  readonly noun: 'level' | 'type' | 'run';
  readonly from: string;
  readonly to: string;
}

export interface DesignChange {
  readonly projectId: string;
  readonly before: JobDocument;
  readonly after: JobDocument;
  /** Layouts of the runs of `after`, by key. */
  readonly layouts: ReadonlyMap<string, RunLayout>;
  readonly rename: Rename | null;
  readonly newId: () => string;
}

/** Writes what differs between two designs of the same scope, and counts the design's version up. */
export async function saveDesign(tx: Tx, change: DesignChange): Promise<void> {
  await saveHead(tx, change);
  const levelIds = await saveLevels(tx, change);
  const typeIds = await saveTypes(tx, change);
  await saveRuns(tx, change, levelIds, typeIds);
  await dropUnused(tx, change);
}

async function saveHead(tx: Tx, { projectId, before, after }: DesignChange): Promise<void> {
  const project = same(before.project, after.project) ? {} : projectColumns(after.project);
  await tx.project.update({
    where: { id: projectId },
    data: {
      ...project,
      ...(same(before.extras, after.extras) ? {} : { extras: json(after.extras ?? []) }),
      ...(same(before.bid, after.bid) ? {} : { bid: json(after.bid ?? null) }),
      ...(same(before.project, after.project) ? {} : { version: { increment: 1 } }),
      designVersion: { increment: 1 },
    },
  });
  if (same(before.labourBook, after.labourBook)) return;
  if (after.labourBook === undefined) await tx.labourBook.deleteMany({ where: { projectId } });
  else {
    const spec = json(after.labourBook);
    await tx.labourBook.upsert({
      where: { projectId },
      create: { projectId, spec },
      update: { spec, version: { increment: 1 } },
    });
  }
}

/** The searchable columns beside a project's document. */
export function projectColumns(project: ProjectDocument) {
  const search = [project.number, project.name, project.client, project.site].filter(Boolean).join(' ').toLowerCase();
  return { number: project.number, name: project.name, search, spec: json(project) };
}

async function saveLevels(
  tx: Tx,
  { projectId, before, after, rename, newId }: DesignChange,
): Promise<Map<string, string>> {
  const known = await keysOf(
    tx.level.findMany({ where: { projectId }, select: { id: true, key: true } }),
    'level',
    rename,
  );
  const old = new Map(before.levels.map((level) => [renamed('level', rename, level.id), level]));
  for (const level of after.levels) {
    const columns = { key: level.id, name: level.name, ordinal: level.order, spec: json(level) };
    const id = known.get(level.id);
    if (id === undefined) {
      const made = await tx.level.create({ data: { id: newId(), projectId, ...columns } });
      known.set(level.id, made.id);
    } else if (!same(old.get(level.id), level)) {
      await tx.level.update({ where: { id }, data: { ...columns, version: { increment: 1 } } });
    }
  }
  return known;
}

async function saveTypes(
  tx: Tx,
  { projectId, before, after, rename, newId }: DesignChange,
): Promise<Map<string, string>> {
  const known = await keysOf(
    tx.buswayType.findMany({ where: { projectId }, select: { id: true, key: true } }),
    'type',
    rename,
  );
  const old = new Map(before.buswayTypes.map((type) => [renamed('type', rename, type.id), type]));
  for (const [ordinal, type] of after.buswayTypes.entries()) {
    const id = known.get(type.id);
    if (id === undefined) {
      const made = await tx.buswayType.create({
        data: { id: newId(), projectId, key: type.id, ordinal, spec: json(type) },
      });
      known.set(type.id, made.id);
    } else if (!same(old.get(type.id), type)) {
      await tx.buswayType.update({
        where: { id },
        data: { key: type.id, spec: json(type), version: { increment: 1 } },
      });
    }
  }
  return known;
}

async function saveRuns(
  tx: Tx,
  change: DesignChange,
  levelIds: Map<string, string>,
  typeIds: Map<string, string>,
): Promise<void> {
  const { projectId, before, after, layouts, rename, newId } = change;
  const old = new Map(before.runs.map((run) => [renamed('run', rename, run.id), run]));
  const fresh = after.runs.filter((run) => !old.has(run.id));
  const kept = after.runs.filter((run) => old.has(run.id));
  const columnsOf = (run: RunDocument) => runColumns(run, layoutOf(layouts, run.id), levelIds, typeIds);

  const stored = await inChunks(
    before.runs.map((run) => run.id),
    (chunk) =>
      tx.run.findMany({
        where: { projectId, key: { in: chunk } },
        select: { id: true, key: true, layout: true, revision: true, version: true },
      }),
  );
  const rows = new Map(stored.map((row) => [renamed('run', rename, row.key), row]));
  const differing = kept.flatMap((run) => {
    const row = rows.get(run.id);
    if (row === undefined) return [];
    if (same(old.get(run.id), run) && same(row.layout, layoutOf(layouts, run.id))) return [];
    return [{ id: row.id, ...columnsOf(run), changed: row.revision > 0, version: row.version + 1 }];
  });
  await updateMany(tx, 'Run', differing);
  if (fresh.length === 0) return;
  const last = await tx.run.aggregate({ where: { projectId }, _max: { ordinal: true } });
  const first = (last._max.ordinal ?? -1) + 1;
  await insertMany(
    tx,
    'Run',
    fresh.map((run, index) => ({
      id: newId(),
      projectId,
      ordinal: first + index,
      revision: 0,
      changed: false,
      version: 1,
      releasedAt: null,
      ...columnsOf(run),
    })),
  );
}

/** Rows that left the design. Runs that were released stay barred by the caller. */
async function dropUnused(tx: Tx, { projectId, before, after, rename }: DesignChange): Promise<void> {
  const gone = (noun: Rename['noun'], old: readonly { id: string }[], next: readonly { id: string }[]) => {
    const stays = new Set(next.map((row) => row.id));
    return old.map((row) => renamed(noun, rename, row.id)).filter((key) => !stays.has(key));
  };
  const runs = gone('run', before.runs, after.runs);
  const levels = gone('level', before.levels, after.levels);
  const types = gone('type', before.buswayTypes, after.buswayTypes);
  if (runs.length > 0) await tx.run.deleteMany({ where: { projectId, key: { in: runs } } });
  if (levels.length > 0) await tx.level.deleteMany({ where: { projectId, key: { in: levels } } });
  if (types.length > 0) await tx.buswayType.deleteMany({ where: { projectId, key: { in: types } } });
}

function runColumns(run: RunDocument, layout: RunLayout, levelIds: Map<string, string>, typeIds: Map<string, string>) {
  return {
    levelId: levelIds.get(run.level) ?? missing('level', run.level),
    typeId: typeIds.get(run.type) ?? missing('busway type', run.type),
    key: run.id,
    area: run.area ?? null,
    side: run.side ?? null,
    parentKey: run.feed.kind === 'tee' ? (run.feed.fromRun ?? null) : null,
    pairedKey: run.pairedRun ?? null,
    spec: json(run),
    layout: json(layout),
    lengthU80: layout.length,
    layoutOk: layout.ok,
    stops: layout.findings.filter((finding) => finding.severity === 'stop').length,
  };
}

function layoutOf(layouts: ReadonlyMap<string, RunLayout>, key: string): RunLayout {
  return layouts.get(key) ?? missing('layout', key);
}

function missing(what: string, key: string): never {
  throw new Error(`no ${what} "${key}" in the design that was to be saved`);
}

async function keysOf(
  query: Promise<readonly { id: string; key: string }[]>,
  noun: Rename['noun'],
  rename: Rename | null,
): Promise<Map<string, string>> {
  return new Map((await query).map((row) => [renamed(noun, rename, row.key), row.id]));
}

function renamed(noun: Rename['noun'], rename: Rename | null, key: string): string {
  return rename !== null && rename.noun === noun && rename.from === key ? rename.to : key;
}

/** Most things are written alike; only what is not is put in order first. */
function same(a: unknown, b: unknown): boolean {
  return (
    JSON.stringify(a ?? null) === JSON.stringify(b ?? null) || canonicalJson(a ?? null) === canonicalJson(b ?? null)
  );
}

function json(value: unknown): never {
  return value as never;
}
