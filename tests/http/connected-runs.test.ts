import { beforeAll, expect, it } from 'vitest';
import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { forEachDatabase } from '../support/databases.ts';
import { BRANCH, DRAFT, type Floor, releasedFloor, TEE } from '../support/floor.ts';

/** Pairs that reach across a tee: the draft with the run that holds the tee, and the tee's branch with a run elsewhere. */
const PAIRS: Readonly<Record<string, string>> = {
  [DRAFT]: TEE,
  [TEE]: DRAFT,
  [BRANCH]: 'F2-R01-A',
  'F2-R01-A': BRANCH,
};
const SIDES: Readonly<Record<string, 'A' | 'B'>> = { [TEE]: 'A', [BRANCH]: 'B' };

function paired(job: JobDocument): JobDocument {
  return { ...job, runs: job.runs.map(pair) };
}

function pair(run: RunDocument): RunDocument {
  const { pairedRun: _old, ...rest } = run;
  const side = SIDES[run.id] ?? run.side;
  const other = PAIRS[run.id];
  return {
    ...rest,
    ...(side === undefined ? {} : { side }),
    ...(other === undefined ? {} : { pairedRun: other }),
  };
}

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open(), paired);
    return () => floor.close();
  });

  it('a run is changed though the branch of its pair is paired with a third run', async () => {
    const path = `${floor.job}/runs/${await floor.runId(DRAFT)}`;
    const { version, document } = (await floor.play.as('olive').get(path)).body;
    const changed = await floor.play
      .as('olive')
      .put(path)
      .set('if-match', `"${version}"`)
      .send({ ...document, area: 'Hall 9' });
    expect(changed.body.errors).toBeUndefined();
    expect(changed.status).toBe(200);
  });

  it('a new run is teed from a branch whose own pair stands elsewhere', async () => {
    const path = `${floor.job}/runs/${await floor.runId(DRAFT)}`;
    const { document } = (await floor.play.as('olive').get(path)).body;
    const { pairedRun: _pair, taps: _taps, ...rest } = document;
    const feed = { kind: 'tee', fromRun: 'F2-R01-A', atMm: 4572, branchSide: 'left' };
    const made = await floor.play
      .as('olive')
      .post(`${floor.job}/runs`)
      .send({ ...rest, id: 'F2-R01-A-BR', level: 'F2', side: 'A', feed });
    expect(made.body.errors).toBeUndefined();
    expect(made.status).toBe(201);
  });
});
