import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { RunDocument } from '../../src/document/job-document.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

interface Row {
  id: string;
  key: string;
  version: number;
  revision: number;
  changed: boolean;
}

forEachDatabase((open) => {
  let play: Stage;
  let job: string;
  beforeAll(async () => {
    play = await stage(await open());
    const made = await play.as('ada').post('/api/v1/job-documents').send(demoJob());
    expect(made.status, JSON.stringify(made.body).slice(0, 500)).toBe(201);
    job = `/api/v1/projects/${made.body.id}`;
    await play.joinAll(made.body.id);
  });
  afterAll(() => play.app.close());

  const rows = async (query = ''): Promise<Row[]> =>
    (await play.as('olive').get(`${job}/runs?limit=500${query}`)).body.items;
  const runNamed = async (key: string) => {
    const row = (await rows()).find((one) => one.key === key);
    return play.as('olive').get(`${job}/runs/${row?.id}`);
  };
  const firstKey = () => demoJob().runs[0]?.id ?? '';
  const put = async (key: string, change: (run: RunDocument) => RunDocument) => {
    const read = await runNamed(key);
    return play
      .as('olive')
      .put(`${job}/runs/${read.body.id}`)
      .set('if-match', read.headers.etag ?? '')
      .send(change(read.body.document));
  };

  it('a job document goes in and comes out as it went in', async () => {
    const out = await play.as('olive').get(`${job}/document`);
    expect(out.body).toEqual(JSON.parse(JSON.stringify(demoJob())));
  });

  it('a refused document writes nothing and names every fault', async () => {
    const broken = demoJob();
    const [first, ...rest] = broken.runs;
    const answer = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send({
        ...broken,
        project: { ...broken.project, number: 'B-1' },
        runs: [{ ...first, level: 'attic', type: 'none' }, ...rest],
      });
    expect(answer.status).toBe(422);
    expect(answer.body.errors.map((error: { path: string }) => error.path)).toEqual(
      expect.arrayContaining(['runs[0].level', 'runs[0].type']),
    );
    expect((await play.as('ada').get('/api/v1/projects?q=b-1')).body.total).toBe(0);
  });

  it('prices, rates and the bid reach the office and nobody else, by no route', async () => {
    const routes = ['/document', '/busway-types', '/labour-book', '/figures'];
    const texts = async (person: 'olive' | 'frank' | 'ines' | 'quinn' | 'owen' | 'rita') =>
      Promise.all(routes.map(async (route) => JSON.stringify((await play.as(person).get(job + route)).body)));
    const office = (await texts('olive')).join();
    for (const word of ['"prices"', '"ratePerHour"']) expect(office).toContain(word);
    for (const person of ['frank', 'ines', 'quinn', 'owen', 'rita'] as const) {
      const [document, types, book, figures] = await texts(person);
      expect([document, types, book].join(), person).not.toMatch(/"prices?"|"ratePerHour"|"bid"|jointKit|sectionPerM/);
      expect(JSON.parse(figures ?? '{}').labour.costPerProductiveHour, person).toBeNull();
    }
  });

  it('figures over the API are those that the headless command prints', async () => {
    const { figures } = await import('../../src/domain/figures.ts');
    const { toModel } = await import('../../src/document/to-model.ts');
    const { printFigures } = await import('../../src/document/print-figures.ts');
    const answer = await play.as('olive').get(`${job}/figures`);
    expect(answer.body).toEqual(JSON.parse(JSON.stringify(printFigures(figures(toModel(demoJob()))))));
  });

  it('a length that no sections can make is saved as a draft with a stop, and cannot be released', async () => {
    const changed = await put(firstKey(), (run) => ({ ...run, legs: [{ lengthMm: 1000, turn: 'none' }], taps: [] }));
    expect(changed.status, JSON.stringify(changed.body)).toBe(200);
    expect(changed.body.layoutOk).toBe(false);
    const refused = await play
      .as('olive')
      .post(`${job}/releases`)
      .send({ runs: [firstKey()] });
    expect(refused.status).toBe(409);
    expect(refused.body.type).toBe('/problems/not-releasable');
    expect(refused.body.detail).toContain(firstKey());
    const original = demoJob().runs[0];
    if (original === undefined) throw new Error('the demo has no runs');
    expect((await put(firstKey(), () => original)).body.layoutOk).toBe(true);
  });

  it('a faulty field of a run is named by its path within the run', async () => {
    const answer = await put(firstKey(), (run) => ({ ...run, level: 'attic', legs: [{ lengthMm: -5, turn: 'none' }] }));
    expect(answer.status).toBe(422);
    expect(answer.body.errors.map((error: { path: string }) => error.path)).toContain('legs[0].lengthMm');
  });

  it('releasing all hands every run of the demo to the floor, once', async () => {
    const answer = await play.as('olive').post(`${job}/releases`).set('idempotency-key', 'release-1').send({});
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    expect(answer.body.waiting).toEqual([]);
    expect(answer.body.released).toHaveLength(demoJob().runs.length);
    const again = await play.as('olive').post(`${job}/releases`).set('idempotency-key', 'release-1').send({});
    expect(again.body).toEqual(answer.body);
    expect((await rows('&released=true')).every((row) => row.revision === 1 && !row.changed)).toBe(true);
  });

  it('a foreman cannot release, and a released run cannot be removed or renamed', async () => {
    expect((await play.as('frank').post(`${job}/releases`).send({})).status).toBe(403);
    const read = await runNamed(firstKey());
    const removed = await play
      .as('olive')
      .delete(`${job}/runs/${read.body.id}`)
      .set('if-match', read.headers.etag ?? '');
    expect([removed.status, removed.body.type]).toEqual([409, '/problems/in-use']);
    expect((await put(firstKey(), (run) => ({ ...run, id: 'Renamed' }))).status).toBe(409);
  });

  it('a second release keeps the identity of what stayed the same, and retires what left', async () => {
    const { db } = play.context.database;
    const run = await db.run.findFirstOrThrow({ where: { key: firstKey() } });
    const before = await db.piece.findMany({ where: { runId: run.id }, orderBy: { ordinal: 'asc' } });
    const feet = (n: number) => n * 304.8;
    const changed = await put(firstKey(), (old) => ({
      ...old,
      legs: [{ lengthMm: feet(60), turn: 'none' }],
      taps: (old.taps ?? []).slice(0, 10),
    }));
    expect(changed.status, JSON.stringify(changed.body)).toBe(200);
    expect(changed.body.changed).toBe(true);
    expect(
      await db.piece.count({ where: { runId: run.id, retiredAt: null } }),
      'the floor keeps its pieces until the release',
    ).toBe(before.length);
    const released = await play
      .as('olive')
      .post(`${job}/releases`)
      .send({ runs: [firstKey()], reason: 'the cabinet row got shorter' });
    expect(released.body.released).toEqual([{ run: firstKey(), revision: 2 }]);
    const after = await db.piece.findMany({ where: { runId: run.id, retiredAt: null }, orderBy: { ordinal: 'asc' } });
    const lengths = (pieces: typeof before) => pieces.map((piece) => (piece.toU80 - piece.fromU80) / 80 / 304.8);
    expect(lengths(before)).toEqual([20, 20, 20, 10]);
    expect(lengths(after)).toEqual([20, 20, 20]);
    expect(after.map((piece) => piece.id)).toEqual(before.slice(0, 3).map((piece) => piece.id));
    expect(await db.piece.count({ where: { runId: run.id, retiredAt: { not: null } } })).toBe(1);
    expect(await db.tap.count({ where: { runId: run.id, retiredAt: null } })).toBe(10);
  });

  it('the audit trail names every change, chains, and shows a forged entry', async () => {
    const trail = await play.as('olive').get(`${job}/audit`);
    expect(trail.body.firstBreak).toBeNull();
    expect(trail.body.items.map((entry: { action: string }) => entry.action)).toEqual(
      expect.arrayContaining(['job made', 'job document imported', 'run changed', 'runs released']),
    );
    expect((await play.as('ines').get(`${job}/audit`)).status).toBe(403);
    const { db } = play.context.database;
    const victim = await db.auditEntry.findFirstOrThrow({
      where: { action: 'runs released' },
      orderBy: { seq: 'asc' },
    });
    await db.auditEntry.update({ where: { id: victim.id }, data: { userName: 'Somebody else' } });
    expect((await play.as('olive').get(`${job}/audit`)).body.firstBreak).toBe(victim.seq);
    await db.auditEntry.update({ where: { id: victim.id }, data: { userName: victim.userName } });
    expect((await play.as('olive').get(`${job}/audit`)).body.firstBreak).toBeNull();
  });
});
