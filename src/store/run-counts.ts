import { Prisma } from '../../gen/sqlite/client.ts';
import type { Reader } from './database.ts';
import { inChunks } from './in-chunks.ts';

/** How many things of a run stand in a state. */
export interface StateRow {
  readonly runId: string;
  readonly state: string;
  readonly count: number;
}

export interface PieceRow extends StateRow {
  readonly kind: string;
  readonly length: number;
}

export interface RunCountRows {
  readonly pieces: readonly PieceRow[];
  readonly joints: readonly StateRow[];
  readonly supports: readonly StateRow[];
  readonly taps: readonly StateRow[];
  /** Tap-offs whose drop has its first support recorded. */
  readonly drops: readonly { readonly runId: string; readonly count: number }[];
  /** The last standing record of these kinds on each run. */
  readonly lastWork: readonly { readonly runId: string; readonly at: Date }[];
}

/** Runs to count: all of a project, or those with these ids. */
export type RunScope = 'all' | readonly string[];

/**
 * Grouped counts of runs, so that a page of thousands reads no single joint. What was retired is left out; a record that a
 * later one replaced does not count.
 */
export async function readRunCounts(
  reader: Reader,
  projectId: string,
  scope: RunScope,
  workKinds: readonly string[],
): Promise<RunCountRows> {
  const by = (part: RunScope) => ({
    by: ['runId' as const, 'state' as const],
    where: { projectId, retiredAt: null, ...runIn(part) },
    _count: true as const,
  });
  const [pieces, joints, supports, taps, drops, lastWork] = await Promise.all([
    inParts(scope, (part) => readPieces(reader, projectId, part)),
    inParts(scope, (part) => reader.joint.groupBy(by(part))),
    inParts(scope, (part) => reader.support.groupBy(by(part))),
    inParts(scope, (part) => reader.tap.groupBy(by(part))),
    inParts(scope, (part) => readDrops(reader, projectId, part)),
    inParts(scope, (part) => readLastWork(reader, projectId, part, workKinds)),
  ]);
  return { pieces, joints: rowsOf(joints), supports: rowsOf(supports), taps: rowsOf(taps), drops, lastWork };
}

/** In questions that any database takes. All rows of one run come of one question, in its order. */
async function inParts<Row>(
  scope: RunScope,
  read: (part: RunScope) => Promise<readonly Row[]>,
): Promise<readonly Row[]> {
  return scope === 'all' ? read(scope) : inChunks(scope, read);
}

function runIn(scope: RunScope) {
  return scope === 'all' ? {} : { runId: { in: [...scope] } };
}

type Group = { readonly runId: string; readonly state: string; readonly _count: number };

function rowsOf(groups: readonly Group[]): StateRow[] {
  return groups.map(({ runId, state, _count }) => ({ runId, state, count: _count }));
}

async function readPieces(reader: Reader, projectId: string, scope: RunScope): Promise<PieceRow[]> {
  const rows = await reader.$queryRaw<
    { runId: string; kind: string; length: number | bigint; state: string; count: number | bigint }[]
  >(Prisma.sql`
    SELECT "runId", "kind", "toU80" - "fromU80" AS "length", "state", COUNT(*) AS "count" FROM "Piece"
    WHERE "projectId" = ${projectId} AND "retiredAt" IS NULL ${inScope(scope, Prisma.sql`"runId"`)}
    GROUP BY "runId", "kind", "toU80" - "fromU80", "state"
    ORDER BY 1, 2, 3, 4`);
  return rows.map((row) => ({ ...row, length: Number(row.length), count: Number(row.count) }));
}

async function readDrops(reader: Reader, projectId: string, scope: RunScope): Promise<RunCountRows['drops']> {
  const rows = await reader.$queryRaw<{ runId: string; count: number | bigint }[]>(Prisma.sql`
    SELECT i."runId", COUNT(DISTINCT i."subjectId") AS "count" FROM "Inspection" i
    JOIN "Tap" t ON t."id" = i."subjectId" AND t."retiredAt" IS NULL
    WHERE i."projectId" = ${projectId} AND i."kind" = 'drop-supported' ${inScope(scope, Prisma.sql`i."runId"`)}
      AND NOT EXISTS (SELECT 1 FROM "Inspection" j WHERE j."supersedesId" = i."id")
    GROUP BY i."runId"`);
  return rows.map(({ runId, count }) => ({ runId, count: Number(count) }));
}

/** The last standing record of these kinds on each run. */
export async function readLastWork(
  reader: Reader,
  projectId: string,
  scope: RunScope,
  kinds: readonly string[],
): Promise<RunCountRows['lastWork']> {
  const rows = await reader.$queryRaw<{ runId: string; at: string | number | Date }[]>(Prisma.sql`
    SELECT i."runId", MAX(i."at") AS "at" FROM "Inspection" i
    WHERE i."projectId" = ${projectId} AND i."kind" IN (${Prisma.join([...kinds])}) ${inScope(scope, Prisma.sql`i."runId"`)}
      AND NOT EXISTS (SELECT 1 FROM "Inspection" j WHERE j."supersedesId" = i."id")
    GROUP BY i."runId"`);
  return rows.map(({ runId, at }) => ({ runId, at: new Date(at) }));
}

function inScope(scope: RunScope, column: Prisma.Sql): Prisma.Sql {
  if (scope === 'all') return Prisma.empty;
  return scope.length === 0 ? Prisma.sql`AND 1 = 0` : Prisma.sql`AND ${column} IN (${Prisma.join([...scope])})`;
}

/** Records that speak of a run as a whole, each run's in the order of the book; its standing tests without their readings. */
export async function readWholeRunRecords(reader: Reader, projectId: string, scope: RunScope) {
  const where = (part: RunScope) => ({ projectId, subject: 'run', ...runIn(part) });
  const orderBy = { seq: 'asc' as const };
  const [records, tests] = await Promise.all([
    inParts(scope, (part) => reader.inspection.findMany({ where: { ...where(part), kind: { not: TEST } }, orderBy })),
    inParts(scope, (part) =>
      reader.inspection.findMany({
        where: { ...where(part), kind: TEST },
        orderBy,
        select: { id: true, runId: true, at: true, outcome: true },
      }),
    ),
  ]);
  const later = await inParts(scope, (part) =>
    reader.inspection.findMany({
      where: { ...where(part), supersedesId: { not: null } },
      select: { supersedesId: true },
    }),
  );
  const replaced = new Set(later.map((row) => row.supersedesId));
  return { records, tests: tests.filter((row) => !replaced.has(row.id)) };
}

const TEST = 'insulation-test';
