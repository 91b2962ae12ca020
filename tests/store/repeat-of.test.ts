import { beforeAll, expect, it } from 'vitest';
import { designOf } from '../../src/actions/job-design.ts';
import { campusJob } from '../../src/document/demo/campus.ts';
import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { repeatsOf } from '../../src/domain/labour/repeats.ts';
import { repeatOf } from '../../src/store/repeat-of.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

/** Floors worked in an order of their own, one run that no stock covers, and runs not sorted by floor. */
function mixed(): JobDocument {
  const job = campusJob({ runs: 110, seed: 5 });
  const orders = [3, 2, 4, 9, 1];
  const [first, ...runs] = job.runs;
  const uncovered: RunDocument = { ...first!, legs: [{ lengthMm: 1_001.7, turn: 'none' }], taps: [] };
  return {
    ...job,
    levels: job.levels.map((level, i) => ({ ...level, order: orders[i] ?? 5 })),
    runs: [...runs, uncovered].map((run, i, all) =>
      i % 7 === 0 ? { ...run, level: all[(i + 50) % all.length]!.level } : run,
    ),
  };
}

forEachDatabase((open) => {
  let play: Stage;
  let projectId: string;
  beforeAll(async () => {
    play = await stage(await open());
    const made = await play.as('ada').post('/api/v1/job-documents').send(mixed());
    expect(made.body.errors).toBeUndefined();
    projectId = made.body.id;
    return () => play.app.close();
  });

  it.each(['run', 'level'] as const)('a run knows which repeat its %s is, as when all are counted', async (over) => {
    const { db } = play.context.database;
    const { job, layouts } = await designOf(db, projectId);
    const sound = job.runs.filter((_, index) => layouts[index]?.ok);
    const all = repeatsOf(job.levels, sound, over);
    const rows = await db.run.findMany({
      where: { projectId },
      select: { key: true, ordinal: true, levelId: true, layoutOk: true, level: { select: { ordinal: true } } },
    });
    expect(all.size).toBeGreaterThan(100);
    expect(all.size).toBeLessThan(rows.length);
    for (const { key, level, ...row } of rows) {
      const repeat = await repeatOf(db, { ...row, projectId, levelOrdinal: level.ordinal }, over);
      expect([key, repeat]).toEqual([key, all.get(key) ?? null]);
    }
  });
});
