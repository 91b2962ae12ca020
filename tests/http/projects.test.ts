import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

forEachDatabase((open) => {
  let play: Stage;
  beforeAll(async () => {
    play = await stage(await open());
  });
  afterAll(() => play.app.close());

  const heading = { ...demoJob().project, number: 'T-1' };

  it('a script without a token is told to sign in, as problem details', async () => {
    const { default: request } = await import('supertest');
    const answer = await request(play.app.server).get('/api/v1/projects');
    expect(answer.status).toBe(401);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.body).toMatchObject({ type: '/problems/signed-out', status: 401 });
  });

  it('a job is made once however often its maker sends the same key, and another request under that key is refused', async () => {
    const ada = play.as('ada');
    const first = await ada.post('/api/v1/projects').set('idempotency-key', 'k1').send(heading);
    const again = await ada.post('/api/v1/projects').set('idempotency-key', 'k1').send(heading);
    const other = await ada
      .post('/api/v1/projects')
      .set('idempotency-key', 'k1')
      .send({ ...heading, number: 'T-2' });
    expect([first.status, again.status, other.status]).toEqual([201, 201, 422]);
    expect(again.body.id).toBe(first.body.id);
    expect(other.body.type).toBe('/problems/key-reused');
    expect((await ada.get('/api/v1/projects')).body.total).toBe(1);
  });

  it('a number that another job has is refused beside its field', async () => {
    const answer = await play.as('ada').post('/api/v1/projects').send(heading);
    expect(answer.status).toBe(409);
    expect(answer.body.errors).toEqual([{ path: 'number', message: '"T-1" is taken', remedy: 'Choose another.' }]);
  });

  it('every faulty field is named at once with a remedy', async () => {
    const answer = await play
      .as('ada')
      .post('/api/v1/projects')
      .send({ ...heading, number: 'T-3', units: 'feet', frequencyHz: -1, colour: 'red' });
    expect(answer.status).toBe(422);
    const paths = answer.body.errors.map((error: { path: string }) => error.path);
    expect(paths).toEqual(expect.arrayContaining(['units', 'frequencyHz']));
    expect(answer.body.errors.every((error: { remedy: string }) => error.remedy.length > 5)).toBe(true);
  });

  it('a change on an older reading is a 412 that shows what stands there now, and without a reading a 428', async () => {
    const ada = play.as('ada');
    const { id } = (await ada.get('/api/v1/projects')).body.items[0];
    const read = await ada.get(`/api/v1/projects/${id}`);
    expect(read.headers.etag).toBe('"1"');
    const kept = await ada
      .put(`/api/v1/projects/${id}`)
      .set('if-match', '"1"')
      .send({ ...heading, name: 'First writer' });
    const late = await ada
      .put(`/api/v1/projects/${id}`)
      .set('if-match', '"1"')
      .send({ ...heading, name: 'Second writer' });
    const blind = await ada.put(`/api/v1/projects/${id}`).send({ ...heading, name: 'Third writer' });
    expect([kept.status, late.status, blind.status]).toEqual([200, 412, 428]);
    expect(late.body.current.document.name).toBe('First writer');
    expect(late.body.currentVersion).toBe(2);
  });

  it('somebody else’s job is not found, and a reader cannot change it', async () => {
    const { id } = (await play.as('ada').get('/api/v1/projects')).body.items[0];
    await play.joinAll(id);
    expect((await play.as('stan').get(`/api/v1/projects/${id}`)).status).toBe(404);
    expect((await play.as('rita').get(`/api/v1/projects/${id}`)).status).toBe(200);
    const refused = await play.as('rita').put(`/api/v1/projects/${id}`).set('if-match', '"2"').send(heading);
    expect(refused.status).toBe(403);
    expect(refused.body.type).toBe('/problems/forbidden');
  });
});
