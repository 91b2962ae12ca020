import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf, readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let play: Stage;
  beforeAll(async () => {
    play = await stage(await open());
  });
  afterAll(() => play.app.close());
  const post = (person: Parameters<Stage['as']>[0], path: string, fields: Record<string, string>) =>
    play.as(person).post(path).type('form').send(fields);

  it('who is not signed in is sent to the sign-in form, and back to the page afterwards', async () => {
    const { default: request } = await import('supertest');
    const answer = await request(play.app.server).get('/jobs?q=quay');
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/sign-in?next=%2Fjobs%3Fq%3Dquay');
  });

  it('a person without any job reads that, and is offered no way to make one', async () => {
    const page = await play.as('stan').get('/jobs');
    expect(page.status).toBe(200);
    expect(readPage(page.text)).toContain('No job yet that you work on');
    expect(page.text).not.toContain('/jobs/demo');
    expect((await post('stan', '/jobs/demo', { demoNumber: 'DEMO-1' })).status).toBe(403);
  });

  it('the demo job is taken once; a second time its number is told to be taken, with the way to the job', async () => {
    const taken = await post('ada', '/jobs/demo', { demoNumber: 'DEMO-1', submissionId: 'once' });
    expect(taken.status).toBe(303);
    expect(taken.headers.location).toMatch(/^\/jobs\/[0-9a-f-]+\/floors\?done=/);
    const again = await post('ada', '/jobs/demo', { demoNumber: 'DEMO-1', submissionId: 'once' });
    expect(again.headers.location).toBe(taken.headers.location);
    const other = await post('ada', '/jobs/demo', { demoNumber: 'DEMO-1', submissionId: 'twice' });
    expect(other.status).toBe(409);
    expect(readPage(other.text)).toContain('There is already a job with number "DEMO-1"');
    expect(readPage(other.text)).toContain('Open job DEMO-1');
    expect((await post('ada', '/jobs/demo', { demoNumber: 'DEMO-2' })).status).toBe(303);
  });

  it('a faulty job document is refused with every fault, its place and remedy, and the pasted text stays', async () => {
    const { project, ...rest } = demoJob();
    const text = JSON.stringify({ ...rest, project: { ...project, units: 'feet', frequencyHz: 0 }, colour: 'red' });
    const refused = await post('ada', '/jobs/documents', { text });
    expect(refused.status).toBe(422);
    const said = readPage(refused.text);
    for (const place of ['project.units', 'project.frequencyHz', 'colour']) expect(said).toContain(place);
    expect(fieldsOf(refused.text).text).toBe(text);
  });

  it('text that is no JSON is refused with its line and column', async () => {
    const refused = await post('ada', '/jobs/documents', { text: '{\n  "format": busway\n}' });
    expect(refused.status).toBe(422);
    expect(readPage(refused.text)).toMatch(/Line 2, column 13/);
  });

  it('a job document comes in as a file too, and its number is found among the jobs', async () => {
    const document = { ...demoJob(), project: { ...demoJob().project, number: 'FILE-7', client: 'Teal Works' } };
    const taken = await play
      .as('ada')
      .post('/jobs/documents')
      .attach('file', Buffer.from(JSON.stringify(document)), 'job.json')
      .field('text', '');
    expect(taken.status).toBe(303);
    const found = await play.as('ada').get('/jobs?q=teal');
    expect(readPage(found.text)).toContain('FILE-7');
    expect(readPage(found.text)).not.toContain('DEMO-1 Plover');
    expect(readPage((await play.as('ada').get('/jobs?q=nowhere')).text)).toContain('No job of yours fits this search');
  });

  it('jobs are paged, and the way back and forth keeps the search', async () => {
    const page = await play.as('ada').get('/jobs?limit=1&page=2&q=quay');
    expect(readPage(page.text)).toContain('jobs 2 to 2 of 3');
    expect(page.text).toContain('href="/jobs?q=quay&amp;page=1"');
    expect(page.text).toContain('href="/jobs?q=quay&amp;page=3"');
  });

  it('an empty job is made from its heading, and each faulty entry is answered beside its field with the text kept', async () => {
    const fields = {
      number: 'NEW-1',
      name: 'Reed House',
      units: 'metric',
      currency: 'pounds',
      codeBasis: 'IEC',
      frequencyHz: 'fifty',
      voltageLL: '400',
      voltageLN: '230',
    };
    const refused = await post('ada', '/jobs/new', fields);
    expect(refused.status).toBe(422);
    expect(fieldsOf(refused.text)).toMatchObject({ currency: 'pounds', frequencyHz: 'fifty', units: 'metric' });
    expect(refused.text).toMatch(/id="f-currency-fault"/);
    expect(refused.text).toMatch(/id="f-frequencyHz-fault"/);
    const made = await post('ada', '/jobs/new', { ...fields, currency: 'GBP', frequencyHz: '50' });
    expect(made.status).toBe(303);
    expect(made.headers.location).toMatch(/\/settings\?done=/);
    expect((await play.as('ada').get(made.headers.location ?? '')).status).toBe(200);
  });
});
