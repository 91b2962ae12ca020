import { groupBy } from '../domain/takeoff/group-by.ts';
import type { RunPlace } from './closeout-runs.ts';
import type { Reader } from './database.ts';

/** A piece, joint, hanger or tap-off with how far it is. */
export interface ThingRow {
  readonly id: string;
  readonly runId: string;
  readonly mark: string;
  readonly state: string;
}

/** Some runs with all that stands on them and the standing records that speak of them whole, each list by run. */
export type EvidencePage = Awaited<ReturnType<typeof readEvidencePage>>;
export type EvidenceRun = EvidencePage['runs'][number];

/** Records that no state of a piece, joint, hanger or tap-off shows. */
const KINDS = [
  'end-closed',
  'end-opened',
  'slot-closed',
  'slot-opened',
  'activity-done',
  'insulation-test',
  'drop-supported',
];

export async function readEvidencePage(reader: Reader, places: readonly RunPlace[]) {
  const ids = places.map((place) => place.id);
  const where = { runId: { in: ids }, retiredAt: null };
  const orderBy = [{ ordinal: 'asc' as const }, { id: 'asc' as const }];
  const select = { id: true, runId: true, mark: true, state: true };
  const [rows, drafts, pieces, joints, supports, taps, records] = await Promise.all([
    reader.run.findMany({
      where: { id: { in: ids } },
      select: { id: true, key: true, revision: true, changed: true, spec: true },
    }),
    reader.run.findMany({ where: { id: { in: ids }, revision: 0 }, select: { id: true, layout: true } }),
    reader.piece.findMany({ where, orderBy, select }),
    reader.joint.findMany({ where, orderBy, select }),
    reader.support.findMany({ where, orderBy, select }),
    reader.tap.findMany({ where, orderBy, select: { id: true, runId: true, key: true, state: true, spec: true } }),
    readStandingRecords(reader, ids),
  ]);
  const layouts = new Map(drafts.map((row) => [row.id, row.layout]));
  const found = new Map(rows.map((row) => [row.id, { ...row, draft: layouts.get(row.id) ?? null }]));
  return {
    runs: ids.flatMap((id) => found.get(id) ?? []),
    pieces: byRun<ThingRow>(pieces),
    joints: byRun<ThingRow>(joints),
    supports: byRun<ThingRow>(supports),
    taps: byRun(taps),
    records: byRun(records),
  };
}

/** In the order of the book, without what a later record replaced. */
async function readStandingRecords(reader: Reader, ids: readonly string[]) {
  const runId = { in: [...ids] };
  const [records, replacing] = await Promise.all([
    reader.inspection.findMany({ where: { runId, kind: { in: KINDS } }, orderBy: { seq: 'asc' } }),
    reader.inspection.findMany({ where: { runId, supersedesId: { not: null } }, select: { supersedesId: true } }),
  ]);
  const replaced = new Set(replacing.map((row) => row.supersedesId));
  return records.filter((record) => !replaced.has(record.id));
}

function byRun<T extends { readonly runId: string }>(rows: readonly T[]): ReadonlyMap<string, readonly T[]> {
  return new Map(groupBy(rows, (row) => row.runId).map((group) => [group[0].runId, group]));
}
