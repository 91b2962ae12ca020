import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf, readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let play: Stage;
  let jobId: string;
  beforeAll(async () => {
    play = await stage(await open());
    jobId = (await play.as('ada').post('/api/v1/job-documents').send(demoJob())).body.id;
    await play.joinAll(jobId);
    return () => play.app.close();
  });
  const several = (rest = '') => `/jobs/${jobId}/runs/several${rest}`;
  const api = (rest: string) => `/api/v1/projects/${jobId}${rest}`;
  const post = (rest: string, fields: object) => play.as('olive').post(several(rest)).type('form').send(fields);
  const runCount = async () => (await play.as('olive').get(api('/runs?limit=1'))).body.total;
  /** The fields that the preview's own button sends. */
  const carried = (html: string) => fieldsOf(/action="[^"]*\/made"[\s\S]*?<\/form>/.exec(html)?.[0] ?? '');
  const runOf = async (key: string) => {
    const { items } = (await play.as('olive').get(api(`/runs?q=${key}&limit=9`))).body;
    return items.find((row: { key: string }) => row.key === key);
  };

  it('runs are found by level, type and side, ticked, and carried into the form that was asked for', async () => {
    const list = await play.as('olive').get(several('?level=F1&side=B'));
    expect(list.status).toBe(200);
    expect(readPage(list.text)).toContain('F1-R01-B');
    expect(readPage(list.text)).not.toContain('F1-R01-A');
    const copy = await post('', { tick: ['F1-R01-A', 'F1-R01-B'], do: 'copies' });
    expect(copy.status).toBe(200);
    expect(fieldsOf(copy.text).runs).toBe('F1-R01-A\nF1-R01-B');
    expect(readPage(copy.text)).toContain('F2, Floor 2');
    expect(readPage(copy.text)).not.toContain('F1, Floor 1');
    const all = await post('?level=F1&side=B', { all: 'yes', do: 'changes' });
    expect(readPage(all.text)).toContain('5 runs');
    const none = await post('', { do: 'partners' });
    expect(none.status).toBe(422);
    expect(readPage(none.text)).toContain('No run is ticked.');
  });

  it('what cannot be copied stays typed, with what is wrong beside it, and nothing is made', async () => {
    const before = await runCount();
    const fields = {
      runs: 'F1-R01-A',
      rows: '-1',
      'pitch.xMm': '3 furlongs',
      step: '0',
      names: '{floor}',
      supply: 'x',
      taps: 'yes',
    };
    const unread = await post('/copies', fields);
    expect(unread.status).toBe(422);
    expect(fieldsOf(unread.text)).toMatchObject(fields);
    expect(readPage(unread.text)).toContain('2 entries need your attention');
    expect(readPage(unread.text)).toContain('0 cannot be counted on by. Write a whole number, 1 to 10,000.');
    const refused = await post('/copies', { ...fields, 'pitch.xMm': '', step: '' });
    expect(refused.status).toBe(422);
    expect(readPage(refused.text)).toContain('-1 further rows is less than none. Write 1 to 200.');
    expect(readPage(refused.text)).toContain('{floor} is not filled in here.');
    expect(await runCount()).toBe(before);
  });

  it('copies are shown by name and drawn before they are made', async () => {
    const before = await runCount();
    const typed = { rows: '1', 'pitch.yMm': '200 ft', step: '20', taps: 'yes', branches: 'yes' };
    const shown = await post('/copies', { ...typed, runs: 'F1-R06-A' });
    expect(shown.status).toBe(200);
    expect(readPage(shown.text)).toContain('2 runs will be made');
    expect(readPage(shown.text)).toContain('F1-R26-A-BR F1-R06-A-BR F1 A-side');
    expect(readPage(shown.text)).toContain('Plan of F1; a + stands before the name of what is new.');
    expect(shown.text).toContain('+ F1-R26-A-BR</text>');
    expect(await runCount()).toBe(before);
  });

  it('a copy onto names that are there is refused with the names', async () => {
    const refused = await post('/copies', { runs: 'F1-R01-A', rows: '0', levels: 'F2' });
    expect(refused.status).toBe(422);
    expect(readPage(refused.text)).toContain(
      'The job already has run F2-R01-A, which F1-R01-A would give its name to.',
    );
  });

  it('what was shown is made once, however often it is sent', async () => {
    const before = await runCount();
    const shown = await post('/copies', { runs: 'F2-R01-A\nF2-R01-B', rows: '1', 'pitch.yMm': '300 ft', step: '50' });
    const fields = carried(shown.text);
    const [made, again] = [await post('/copies/made', fields), await post('/copies/made', fields)];
    expect([made.status, again.status]).toEqual([303, 303]);
    expect(await runCount()).toBe(before + 2);
    expect(decodeURIComponent(made.headers.location ?? '')).toContain('2 runs are made and laid out.');
    expect((await runOf('F2-R51-A')).layoutOk).toBe(true);
  });

  it('a partner is shown and made over the axis that was typed', async () => {
    const typed = { runs: 'F4-R05-A', way: 'axis-left', taps: 'yes', pairTaps: 'yes' };
    const empty = await post('/partners', typed);
    expect(readPage(empty.text)).toContain('This way needs it. Give a distance');
    const taken = await post('/partners', { ...typed, 'way.awayMm': '3 ft' });
    expect(readPage(taken.text)).toContain('F4-R05-A has a partner already, F4-R05-B.');
    const shown = await post('/partners', {
      ...typed,
      runs: 'F1-R06-A',
      branches: 'yes',
      way: 'y',
      'way.atMm': '70 m',
    });
    expect(readPage(shown.text)).toContain('2 runs will be made');
    const made = await post('/partners/made', carried(shown.text));
    expect(made.status).toBe(303);
    expect(await runOf('F1-R06-B-BR')).toMatchObject({ side: 'B', layoutOk: true });
  });

  it('a change of many runs is shown old and new; a run that changed meanwhile is named and nothing is written', async () => {
    const typed = {
      runs: 'F3-R01-A\nF3-R01-B',
      area: 'North hall',
      faultKA: 'none',
      structure: 'grid',
      pitchMm: '13 ft',
    };
    const shown = await post('/changes', typed);
    const said = readPage(shown.text);
    expect(said).toContain('2 runs will change');
    expect(said).toContain('F3-R01-A Fault current at the source 18 kA not stated');
    expect(said).toContain(`F3-R01-B Structure carries a hanger anywhere on lines every 13'-0", the first at 0"`);
    expect(said).toContain('2 findings would appear, all of them stops');
    const row = await runOf('F3-R01-B');
    const { document } = (await play.as('ada').get(api(`/runs/${row.id}`))).body;
    await play
      .as('ada')
      .put(api(`/runs/${row.id}`))
      .set('if-match', `"${row.version}"`)
      .send({ ...document, area: 'South hall' });
    play.setClock('2026-05-12T13:04:30.000Z');
    const stale = await post('/changes/made', carried(shown.text));
    expect(stale.status).toBe(409);
    expect(readPage(stale.text)).toContain('Run F3-R01-B changed since this was shown (Ada Marsh, 4 min ago).');
    expect(readPage(stale.text)).toContain('F3-R01-B Room or area South hall North hall');
    expect((await runOf('F3-R01-A')).area).toBe('Hall 3');
    const done = await post('/changes/made', carried(stale.text));
    expect(done.status).toBe(303);
    expect((await runOf('F3-R01-B')).area).toBe('North hall');
  });

  it('what cannot be read of a change stands beside its field', async () => {
    const typed = { runs: 'F3-R02-A', deviceA: 'many', level: 'none', end: 'range', structure: 'grid', rod: 'M11' };
    const refused = await post('/changes', typed);
    expect(refused.status).toBe(422);
    const said = readPage(refused.text);
    expect(said).toContain('Every run has one. Choose another, or leave the field empty.');
    expect(said).toContain('Neither distance is given.');
    expect(said).toContain('Lines need their distance.');
    expect(fieldsOf(refused.text).deviceA).toBe('many');
    const nothing = await post('/changes', { runs: 'F3-R02-A' });
    expect(readPage(nothing.text)).toContain('No field is filled in, so nothing would change.');
  });

  it('only the office gets to these pages', async () => {
    for (const rest of ['', '/copies?run=F1-R01-A', '/partners?run=F1-R01-A', '/changes?level=F1']) {
      expect((await play.as('olive').get(several(rest))).status).toBe(200);
      expect((await play.as('rita').get(several(rest))).status).toBe(403);
      expect((await play.as('stan').get(several(rest))).status).toBe(404);
    }
  });
});
