import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  beforeAll(async () => {
    play = await stage(await open());
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(demoJob());
    await play.joinAll(body.id);
    id = body.id;
    return () => play.app.close();
  });
  const ask = (change: object) => play.as('olive').post(`/api/v1/projects/${id}/what-if`).send(change);
  const page = (query: Record<string, string>) => play.as('olive').get(`/jobs/${id}/what-if`).query(query);
  const document = async () => (await play.as('olive').get(`/api/v1/projects/${id}/document`)).text;
  const stands = async () => {
    const project = (await play.as('olive').get(`/api/v1/projects/${id}`)).body;
    const steps = (await play.as('olive').get(`/api/v1/projects/${id}/design-steps`)).body;
    const figures = (await play.as('olive').get(`/api/v1/projects/${id}/figures`)).text;
    return { project, steps, figures, document: await document() };
  };

  it('both columns come of the same working, and asking changes nothing of the job', async () => {
    const before = await stands();
    const { body, status } = await ask({ conditions: [{ level: null, congestion: 'tight' }], policy: 'compound' });
    expect(status).toBe(200);
    const { labour, bid } = JSON.parse(before.figures);
    expect(body.base.hours.likely).toBeCloseTo(labour.hours.likely, 6);
    expect(body.base.hours.p80).toBeCloseTo(labour.hours.p80, 6);
    expect(body.base.price).toBe(bid?.price ?? null);
    expect(body.changed.hours.likely).toBeGreaterThan(body.base.hours.likely);
    expect(body.changed.material).toBe(body.base.material);
    expect(await stands()).toEqual(before);
  });

  it('the page shows them beside each other, by activity and level, from an address alone, and says that the job is unchanged', async () => {
    const answer = await page({
      'activities[0].activity': 'joint',
      'activities[0].likely': '1.2',
      'conditions[1].level': '*',
      'conditions[1].liveArea': 'yes',
    });
    expect(answer.status).toBe(200);
    const said = readPage(answer.text);
    expect(said).toContain('The job is unchanged: the second column is worked on a copy and kept nowhere.');
    expect(said).toMatch(/Labour hours, likely [\d,.]+ h [\d,.]+ h \+[\d,.]+ h \(\+\d+\.\d %\)/);
    expect(said).toMatch(/make up joints [\d.]+ [\d.]+ \+[\d.]+/);
    expect(said).toMatch(/Floor 2 [\d.]+ [\d.]+ \+[\d.]+/);
    expect(said).toContain('is invented');
    expect(answer.text).toContain('value="1.2"');
  });

  it('other stock lengths tell which things are bought in another number', async () => {
    const [type] = demoJob().buswayTypes;
    const said = readPage((await page({ 'stock[0].type': type!.id, 'stock[0].lengthsMm': `10'-0"; 5'-0"` })).text);
    expect(said).toMatch(/Things in another number/);
    expect(said).toMatch(/clamp[^.]* \d+ \d+ \+\d+/);
  });

  it('what cannot be is told beside its field, and what was typed stays', async () => {
    const answer = await page({ 'routes[2].run': 'F9-R99-X', 'routes[2].legsMm': 'far', 'conditions[0].level': '' });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('id="f-routes-2--legsMm-fault"');
    expect(answer.text).toContain('value="F9-R99-X"');
    const unknown = await page({ 'routes[2].run': 'F9-R99-X', 'routes[2].dropMm': '3 ft' });
    expect(readPage(unknown.text)).toContain('The job has no run "F9-R99-X".');
    const refused = await ask({ routes: [{ run: 'F9-R99-X' }], conditions: [{ level: 'F99' }] });
    expect(refused.status).toBe(422);
    expect(refused.body.errors.map(({ path }: { path: string }) => path)).toEqual([
      'conditions[0].level',
      'routes[0].run',
    ]);
    expect((await ask({ policy: 'multiply' })).status).toBe(422);
  });

  it('costs are the office’s alone', async () => {
    for (const person of ['frank', 'ines', 'quinn', 'owen', 'rita'] as const) {
      expect((await play.as(person).post(`/api/v1/projects/${id}/what-if`).send({})).status, person).toBe(403);
      expect((await play.as(person).get(`/jobs/${id}/what-if`)).status, person).toBe(403);
      expect((await play.as(person).get(`/jobs/${id}/hours`)).text).not.toContain('/what-if');
    }
    expect((await play.as('stan').post(`/api/v1/projects/${id}/what-if`).send({})).status).toBe(404);
  });
});
