import { beforeAll, beforeEach, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let play: Stage;
  let made = 0;
  let id: string;
  beforeAll(async () => {
    play = await stage(await open());
    return () => play.app.close();
  });
  beforeEach(async () => {
    id = await bring(demoJob());
  });
  const bring = async (document: ReturnType<typeof demoJob>) => {
    const project = { ...document.project, number: `LB-${++made}` };
    const { body } = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send({ ...document, project });
    await play.joinAll(body.id);
    return body.id as string;
  };
  const form = async () => {
    const { text } = await play.as('olive').get(`/jobs/${id}/labour-book`);
    const fields: Record<string, string> = {};
    for (const [tag] of text.matchAll(/<input[^>]*>/g)) {
      const of = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
      const name = of('name');
      if (name === undefined || (of('type') === 'checkbox' && !/ checked/.test(tag))) continue;
      fields[name] = (of('value') ?? '').replaceAll('&quot;', '"').replaceAll('&#39;', "'");
    }
    for (const [, name = '', inner = ''] of text.matchAll(/<select[^>]* name="([^"]+)"[^>]*>(.*?)<\/select>/g))
      fields[name] = /<option value="([^"]*)" selected/.exec(inner)?.[1] ?? '';
    return fields;
  };
  const send = (fields: Record<string, string>, person: Parameters<Stage['as']>[0] = 'olive') =>
    play.as(person).post(`/jobs/${id}/labour-book`).type('form').send(fields);
  const book = async () => (await play.as('olive').get(`/api/v1/projects/${id}/labour-book`)).body;

  it('saved untouched it stays the same book; one unit typed anew changes that unit and the hours', async () => {
    const before = await book();
    expect((await send(await form())).status).toBe(303);
    expect((await book()).document).toEqual(before.document);
    const hours = async () => (await play.as('olive').get(`/api/v1/projects/${id}/figures`)).body.labour.hours.likely;
    const was = await hours();
    expect((await send({ ...(await form()), bookVersion: 'demo-2', 'activities.tap.likely': '0.45' })).status).toBe(
      303,
    );
    const after = await book();
    expect(after.document.activities.tap.likely).toBe(0.45);
    expect(after.document.version).toBe('demo-2');
    expect(await hours()).toBeGreaterThan(was);
  });

  it('a condition of the whole job and overtime are entered, and stand in the working of each line that feels them', async () => {
    const entries = {
      'jobConditions[0].name': 'night shift',
      'jobConditions[0].percent': '8',
      'overtime.hoursPerWeek': '48',
      'crew[0].burdenPercent': '40',
    };
    expect((await send({ ...(await form()), ...entries })).status).toBe(303);
    const { document } = await book();
    expect(document.jobConditions).toEqual([{ name: 'night shift', percent: 8 }]);
    expect(document.overtime).toEqual({ hoursPerWeek: 48 });
    const said = readPage((await play.as('olive').get(`/jobs/${id}/hours?activity=joint&level=F2`)).text);
    expect(said).toContain('night shift +8 % conditions of the job, labour book demo-1 (invented)');
    const hours = readPage((await play.as('olive').get(`/jobs/${id}/hours`)).text);
    expect(hours).toContain('48 h a week, beyond 40 h paid × 1.5: 1.0833 h paid an hour worked');
    // Nobody else learns of rates, burden or overtime.
    const floor = readPage((await play.as('frank').get(`/jobs/${id}/hours`)).text);
    expect(floor).toContain('night shift');
    expect(floor).not.toMatch(/48 h a week|burden|paid/);
    const named = { ...(await form()), 'jobConditions[1].name': 'live', 'jobConditions[1].percent': '5' };
    const refused = await send(named);
    expect(refused.status).toBe(422);
    expect(readPage(refused.text)).toContain('"live" is a condition of a level.');
  });

  it('which activities feel a condition, and which are learned, is ticked; without a tick there is no list', async () => {
    const shift = { 'jobConditions[0].name': 'night shift', 'jobConditions[0].percent': '8' };
    const felt = { 'jobConditions[0].activities.tap': 'yes', 'jobConditions[0].activities.joint': 'yes' };
    const learned = { 'learning.activities.section': 'yes', 'learning.activities.joint': 'yes' };
    const were = (await book()).document;
    expect((await send({ ...(await form()), ...shift, ...felt, ...learned })).status).toBe(303);
    const named = (await book()).document;
    expect(named.jobConditions).toEqual([{ name: 'night shift', percent: 8, activities: ['joint', 'tap'] }]);
    expect(named.learning).toEqual({ ...were.learning, activities: ['section', 'joint'] });
    const line = async (activity: string) =>
      readPage((await play.as('olive').get(`/jobs/${id}/hours?activity=${activity}&level=F2`)).text);
    expect(await line('joint')).toContain('night shift +8 %');
    expect(await line('drop')).not.toContain('night shift');
    expect(readPage((await play.as('olive').get(`/jobs/${id}/labour-book`)).text)).toContain(
      'Felt by condition 1: make up joints, set tap-offs',
    );

    // Untouched it stays the same book, and the ticks go as they came.
    expect((await send(await form())).status).toBe(303);
    expect((await book()).document).toEqual(named);
    const plain = Object.fromEntries(
      Object.entries(await form()).filter(([name]) => !/\.activities\.[a-z-]+$/.test(name)),
    );
    expect((await send(plain)).status).toBe(303);
    expect((await book()).document.jobConditions).toEqual([{ name: 'night shift', percent: 8 }]);
    expect((await book()).document.learning).toEqual(were.learning);
  });

  it('what a book names beyond our activities, and an empty list, stay through a save', async () => {
    const { version, document } = await book();
    const strange = {
      ...document,
      learning: { ...document.learning, activities: ['tap', 'hoist'] },
      jobConditions: [
        { name: 'winter', percent: 5, activities: [] },
        { name: 'new crew', percent: 4, activities: ['joint', 'hoist'] },
      ],
    };
    const put = play.as('olive').put(`/api/v1/projects/${id}/labour-book`).set('if-match', `"${version}"`);
    expect((await put.send(strange)).status).toBe(200);
    expect((await send(await form())).status).toBe(303);
    expect((await book()).document).toEqual(strange);
  });

  it('low hours above the likely ones are told at their field with the number, and what was typed stays', async () => {
    const answer = await send({ ...(await form()), 'activities.end-cap.low': '7' });
    expect(answer.status).toBe(422);
    expect(readPage(answer.text)).toContain('the low hours, 7, are more than the likely ones, 0.15');
    expect(answer.text).toMatch(/id="f-activities-end-cap-low-fault"/);
    expect((await book()).document.activities['end-cap'].low).toBe(0.128);
  });

  it('somebody else’s newer book is not written over', async () => {
    const mine = await form();
    expect((await send({ ...(await form()), 'activities.tap.high': '0.9' })).status).toBe(303);
    const late = await send({ ...mine, 'activities.tap.high': '0.8' });
    expect(late.status).toBe(412);
    expect(readPage(late.text)).toContain('Somebody changed this while you did');
    expect((await book()).document.activities.tap.high).toBe(0.9);
  });

  it('only the office sees and sets it', async () => {
    const fields = await form();
    for (const person of ['frank', 'rita', 'owen'] as const) {
      expect((await play.as(person).get(`/jobs/${id}/labour-book`)).status, person).toBe(403);
      expect((await send(fields, person)).status, person).toBe(403);
      expect((await play.as(person).get(`/jobs/${id}/hours`)).text).not.toContain('/labour-book"');
    }
  });

  it('a job without a book gets its first one from the form', async () => {
    const { labourBook: _none, ...bare } = demoJob();
    id = await bring(bare);
    const answer = await send({
      ...(await form()),
      bookVersion: 'first',
      policy: 'add',
      'activities.joint.unit': 'each',
      'activities.joint.low': '0.5',
      'activities.joint.likely': '0.6',
      'activities.joint.high': '0.9',
    });
    expect(answer.status).toBe(303);
    expect((await book()).document).toEqual({
      version: 'first',
      policy: 'add',
      activities: { joint: { unit: 'each', low: 0.5, likely: 0.6, high: 0.9 } },
    });
  });
});
