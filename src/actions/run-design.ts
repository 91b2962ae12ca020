import type { RunDocument } from '../document/job-document.ts';
import { toRun } from '../document/model/to-run.ts';
import { toModel } from '../document/to-model.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { BuswayType, Job, Run } from '../domain/model.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader } from '../store/database.ts';
import { readDesign } from '../store/designs.ts';
import { inChunks } from '../store/in-chunks.ts';
import { repeatOf } from '../store/repeat-of.ts';
import { refuse } from './refused.ts';

/** The design of one run as it stands. */
export interface RunDesign {
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
  /** The job with the runs that are joined to this one, and no others. */
  readonly job: Job;
  /** Ids of these runs, by label. */
  readonly ids: ReadonlyMap<string, string>;
  /** Which repeat it is for the labour book's learning; null without a sound layout. */
  readonly repeat: () => Promise<number | null>;
}

/** Reads one run with what its layout depends on, so that it costs the same however many runs a job has. The caller has asked who is reading. */
export async function runDesignOf(reader: Reader, projectId: string, runId: string): Promise<RunDesign> {
  const row = await reader.run.findFirst({
    where: { projectId, id: runId },
    select: {
      key: true,
      ordinal: true,
      levelId: true,
      layoutOk: true,
      spec: true,
      layout: true,
      level: { select: { ordinal: true } },
    },
  });
  if (row === null) return refuse({ code: 'not-found', what: 'run' });
  const keys = await connectedRuns(reader, projectId, [row.key]);
  const job = toModel(await readDesign(reader, projectId, keys));
  const run = toRun(row.spec as unknown as RunDocument);
  const type = job.types.find(({ id }) => id === run.type);
  if (type === undefined) return refuse({ code: 'not-found', what: 'busway type' }); // taken out since the run was read
  const place = { ...row, projectId, levelOrdinal: row.level.ordinal };
  return {
    run,
    type,
    layout: row.layout as unknown as RunLayout,
    job,
    ids: await idsOf(reader, projectId, keys),
    repeat: () => repeatOf(reader, place, job.labourBook?.learning?.over ?? 'run'),
  };
}

async function idsOf(reader: Reader, projectId: string, keys: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await inChunks(keys, (chunk) =>
    reader.run.findMany({ where: { projectId, key: { in: chunk } }, select: { id: true, key: true } }),
  );
  return new Map(rows.map(({ id, key }) => [key, id]));
}
