import { recordBodySchema } from '../../../document/record-schema.ts';
import type { RunLayout } from '../../../domain/layout/result.ts';
import type { Reader } from '../../../store/database.ts';
import { inChunks } from '../../../store/in-chunks.ts';
import { bars } from '../../releases.ts';
import type { RunState } from '../../run-states.ts';

/** Something that stops the work: what, since when and by whom it was said. */
export interface FloorStop {
  readonly kind: 'quarantined' | 'reopened' | 'not-released' | 'test-not-passed' | 'test-stale';
  readonly runId: string;
  readonly runKey: string;
  readonly thing: { readonly id: string; readonly mark: string } | null;
  readonly reason: string | null;
  readonly by: string | null;
  readonly at: Date | null;
}

interface RunRow {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
}

/** What stops the work on these runs, the oldest of each kind first. */
export async function floorStops(
  reader: Reader,
  runs: readonly RunRow[],
  states: readonly RunState[],
): Promise<readonly FloorStop[]> {
  const runIds = runs.map((run) => run.id);
  const select = { id: true, runId: true, mark: true, stateAt: true } as const;
  const [pieces, joints, waiting] = await Promise.all([
    inChunks(runIds, (chunk) =>
      reader.piece.findMany({ where: { runId: { in: chunk }, retiredAt: null, state: 'quarantined' }, select }),
    ),
    inChunks(runIds, (chunk) =>
      reader.joint.findMany({ where: { runId: { in: chunk }, retiredAt: null, state: 'reopened' }, select }),
    ),
    inChunks(runIds, (chunk) =>
      reader.run.findMany({
        where: { id: { in: chunk }, revision: 0 },
        orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
        select: { id: true, key: true, layout: true },
      }),
    ),
  ]);
  const said = await reasonsOf(
    reader,
    [...pieces, ...joints].map(({ id }) => id),
  );
  const keys = new Map(runs.map(({ id, key }) => [id, key]));
  const thing =
    (kind: FloorStop['kind']) =>
    (row: (typeof pieces)[number]): FloorStop => ({
      kind,
      runId: row.runId,
      runKey: keys.get(row.runId) ?? '',
      thing: { id: row.id, mark: row.mark },
      ...(said.get(row.id) ?? NOTHING_SAID),
    });
  return [
    ...oldestFirst(pieces).map(thing('quarantined')),
    ...oldestFirst(joints).map(thing('reopened')),
    ...states.flatMap(testStop),
    ...waiting.map(({ id, key, layout }): FloorStop => {
      const [first] = bars((layout as unknown as RunLayout).findings);
      return { kind: 'not-released', runId: id, runKey: key, thing: null, ...NOTHING_SAID, reason: first ?? null };
    }),
  ];
}

function oldestFirst<Row extends { readonly stateAt: Date | null }>(rows: readonly Row[]): Row[] {
  return [...rows].sort((a, b) => (a.stateAt?.getTime() ?? 0) - (b.stateAt?.getTime() ?? 0));
}

const NOTHING_SAID = { reason: null, by: null, at: null };

function testStop({ id, key, open }: RunState): FloorStop[] {
  return open.flatMap(({ code, detail }): FloorStop[] =>
    code === 'test-not-passed' || code === 'test-stale'
      ? [{ kind: code, runId: id, runKey: key, thing: null, ...NOTHING_SAID, reason: detail }]
      : [],
  );
}

/** The last words on each of these things that put it there. */
async function reasonsOf(reader: Reader, subjectIds: readonly string[]) {
  const rows = await inChunks(subjectIds, (chunk) =>
    reader.inspection.findMany({
      where: { subjectId: { in: chunk }, kind: { in: ['piece-quarantined', 'joint-reopened'] } },
      orderBy: { recordedAt: 'asc' },
      select: { subjectId: true, body: true, byName: true, at: true },
    }),
  );
  const found = new Map<string, { readonly reason: string | null; readonly by: string; readonly at: Date }>();
  for (const { subjectId, body, byName, at } of rows) {
    const said = recordBodySchema.parse(body);
    found.set(subjectId, { reason: 'reason' in said ? said.reason : null, by: byName, at });
  }
  return found;
}
