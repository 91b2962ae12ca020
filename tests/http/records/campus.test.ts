import { afterAll, beforeAll, expect, it } from 'vitest';
import { runStates } from '../../../src/actions/run-states.ts';
import { campusJob } from '../../../src/document/demo/campus.ts';
import { type Stage, stage } from '../../support/cast.ts';
import { forEachDatabase } from '../../support/databases.ts';

// More runs than a query of SQLite may name (999), so that whatever asks for them one by one is found out.
const RUNS = 1_050;

forEachDatabase((open) => {
  let play: Stage;
  let projectId: string;
  let job: string;
  beforeAll(async () => {
    play = await stage(await open());
    const made = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send(campusJob({ runs: RUNS, seed: 1 }));
    projectId = made.body.id;
    job = `/api/v1/projects/${projectId}`;
    await play.joinAll(projectId);
  }, 120_000);
  afterAll(() => play.app.close());

  it('a campus is released to the floor at one stroke, and again when a run of it changed', {
    timeout: 120_000,
  }, async () => {
    const first = await play.as('olive').post(`${job}/releases`).send({});
    expect([first.status, first.body.released?.length], JSON.stringify(first.body).slice(0, 500)).toEqual([201, RUNS]);
    const [support] = (await play.as('rita').get(`${job}/supports?limit=1`)).body.items;
    const set = { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true };
    const taken = await play.as('ines').post(`${job}/inspections`).send({
      submissionId: 'campus-hanger-1',
      at: play.context.clock().toISOString(),
      subject: 'support',
      subjectId: support.id,
      body: set,
    });
    expect(taken.status, JSON.stringify(taken.body)).toBe(201);
    const again = await play
      .as('olive')
      .post(`${job}/releases`)
      .send({ runs: [support.run] });
    expect(again.body.released, JSON.stringify(again.body)).toEqual([{ run: support.run, revision: 2 }]);
    expect((await play.as('rita').get(`${job}/supports/${support.id}`)).body).toMatchObject({ state: 'set' });
  });

  it('the states of all its runs are reckoned at once, and those of a few the same', { timeout: 60_000 }, async () => {
    const { db } = play.context.database;
    const all = await runStates(db, projectId);
    expect(all).toHaveLength(RUNS);
    expect(all.filter((run) => run.status === 'in-installation')).toHaveLength(1);
    const some = all.slice(0, 3);
    expect(
      await runStates(
        db,
        projectId,
        some.map((run) => run.id),
      ),
    ).toEqual(some);
  });
});
