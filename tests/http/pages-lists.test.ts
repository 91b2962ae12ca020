import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf, readPage } from '../support/page.ts';

const RUNS = [
  'run\tlevel\ttype\tconductor side\tleg lengths\tturns',
  'N1\tF1\tdemo-250A-3PN\tleft\t70 ft\t',
  'N2\tF2\tdemo-250A-3PN\tright\t62 ft; 36 ft\tleft',
].join('\n');
const TAPS = [
  'run\ttap\tat\tphases\tdevice\tload VA',
  'N1\tT01\t1\'-9"\tL1\t30\t2400',
  'N1\tT02\t5.25\tL2\t30\t2.4 kVA',
].join('\n');

forEachDatabase((open) => {
  let play: Stage;
  let jobId: string;
  beforeAll(async () => {
    play = await stage(await open());
    jobId = (await play.as('ada').post('/api/v1/job-documents').send(demoJob())).body.id;
    await play.joinAll(jobId);
    return () => play.app.close();
  });
  const page = (rest = '') => `/jobs/${jobId}/lists${rest}`;
  const api = (rest: string) => `/api/v1/projects/${jobId}${rest}`;
  const post = (rest: string, fields: Record<string, string>, person: Parameters<Stage['as']>[0] = 'olive') =>
    play.as(person).post(page(rest)).type('form').send(fields);
  const runCount = async () => (await play.as('olive').get(api('/runs?limit=1'))).body.total;

  it('every faulty cell is told by row, column, value and remedy, the text stays, and nothing is made', async () => {
    const before = await runCount();
    const text = RUNS.replace('70 ft', '21336').replace('\tF2\t', '\tF9\t').replace('right', 'middle');
    const refused = await post('/runs', { text });
    expect(refused.status).toBe(422);
    const said = readPage(refused.text);
    expect(said).toContain('2 leg lengths 21336 21,336 ft is 4 miles. 21,336 mm = 70.0 ft.');
    expect(said).toContain('3 level F9 The job has no level "F9".');
    expect(said).toContain('3 conductor side middle');
    expect(fieldsOf(refused.text).text).toBe(text);
    expect(await runCount()).toBe(before);
  });

  it('a clean list is shown before anything is made, and made once when it is confirmed', async () => {
    const before = await runCount();
    const shown = await post('/runs', { text: RUNS });
    expect(shown.status).toBe(200);
    expect(readPage(shown.text)).toContain('2 runs will be made');
    expect(readPage(shown.text)).toContain(`N2 F2 demo-250A-3PN right end feed 62'-0", left; 36'-0"`);
    expect(await runCount()).toBe(before);
    const { text = '', submissionId = '' } = fieldsOf(shown.text.slice(shown.text.indexOf('/lists/runs/taken')));
    expect(text).toBe(RUNS);
    const taken = await post('/runs/taken', { text, submissionId });
    const again = await post('/runs/taken', { text, submissionId });
    expect([taken.status, again.status]).toEqual([303, 303]);
    expect(await runCount()).toBe(before + 2);
    const floors = await play.as('olive').get(taken.headers.location ?? '');
    expect(readPage(floors.text)).toContain('2 runs are made and laid out.');
  });

  it('a list that was taken already is refused row by row instead of being made twice', async () => {
    const again = await post('/runs/taken', { text: RUNS, submissionId: 'another' });
    expect(again.status).toBe(422);
    expect(readPage(again.text)).toContain('2 run N1 The job already has run N1.');
  });

  it('tap-offs come by file as well, and stand on their run', async () => {
    const shown = await play
      .as('olive')
      .post(page('/taps'))
      .attach('file', Buffer.from(TAPS), 'taps.tsv')
      .field('text', '');
    expect(shown.status).toBe(200);
    expect(readPage(shown.text)).toContain('2 tap-offs will be made');
    const { text = '', submissionId = '' } = fieldsOf(shown.text.slice(shown.text.indexOf('/lists/taps/taken')));
    expect((await post('/taps/taken', { text, submissionId })).status).toBe(303);
    const { items } = (await play.as('olive').get(api('/runs?q=N1&limit=5'))).body;
    const run = (await play.as('olive').get(api(`/runs/${items[0].id}`))).body;
    expect(run.document.taps).toMatchObject([
      { id: 'T01', atMm: 533.4, loadVA: 2400 },
      { id: 'T02', atMm: 1600.2, loadVA: 2400 },
    ]);
    expect(run.layout.taps ?? run.layout.sections.length).toBeTruthy();
  });

  it('both lists go out as CSV and read back as the same runs, in an empty job with the same levels and types', async () => {
    const [runs, taps] = await Promise.all([
      play.as('rita').get(page('/runs.csv')),
      play.as('rita').get(page('/taps.csv')),
    ]);
    expect(runs.headers['content-disposition']).toBe('attachment; filename="DEMO-1-runs.csv"');
    const { runs: _runs, extras: _extras, ...rest } = demoJob();
    const empty = { ...rest, project: { ...rest.project, number: 'COPY-1' }, runs: [] };
    const { id } = (await play.as('ada').post('/api/v1/job-documents').send(empty)).body;
    const take = (path: string, text: string) =>
      play.as('ada').post(`/api/v1/projects/${id}/${path}`).send({ text, commit: true });
    expect((await take('run-lists', runs.text)).status).toBe(201);
    expect((await take('tap-lists', taps.text)).body).toMatchObject({ committed: true, made: 950 });
    const runsOf = async (of: string) => (await play.as('ada').get(`/api/v1/projects/${of}/document`)).body.runs;
    const [mine, theirs] = [await runsOf(jobId), await runsOf(id)];
    const listed = (run: Record<string, unknown> & { legs: unknown; taps?: { id: string; atMm: number }[] }) => ({
      legs: run.legs,
      level: run.level,
      side: run.side,
      pairedRun: run.pairedRun,
      conductorSide: run.conductorSide,
      start: run.start,
      taps: run.taps?.map(({ id: tap, atMm }) => [tap, atMm]),
    });
    expect(theirs.map(listed)).toEqual(mine.map(listed));
  });

  it('the API says what a list would make, and writes only when it is told to', async () => {
    const before = await runCount();
    const text = RUNS.replaceAll('N1', 'M1').replaceAll('N2', 'M2');
    const asked = await play.as('olive').post(api('/run-lists')).send({ text });
    expect(asked.status).toBe(200);
    expect(asked.body).toMatchObject({ committed: false, made: 2, questions: [] });
    expect(await runCount()).toBe(before);
    const send = () =>
      play.as('olive').post(api('/run-lists')).set('idempotency-key', 'list-1').send({ text, commit: true });
    const [first, second] = [await send(), await send()];
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(second.body).toEqual(first.body);
    expect(await runCount()).toBe(before + 2);
    const refused = await play.as('olive').post(api('/run-lists')).send({ text, commit: true });
    expect(refused.status).toBe(422);
    expect(refused.body.errors[0]).toMatchObject({ path: 'rows[2].run', message: 'The job already has run M1.' });
  });

  it('a question about a cell is shown and taken as typed', async () => {
    const text = ['run\tlevel\ttype\tconductor side\tleg lengths', 'Q1\tF1\tdemo-250A-3PN\tleft\t10.6'].join('\n');
    const { body } = await play.as('olive').post(api('/run-lists')).send({ text });
    expect(body.questions[0]).toMatchObject({ row: 2, column: 'leg lengths', value: '10.6' });
    expect(readPage((await post('/runs', { text })).text)).toContain(`10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`);
  });

  it('who may not design reads and downloads the lists, and is refused to change them', async () => {
    const shown = await play.as('frank').get(page());
    expect(shown.status).toBe(200);
    expect(shown.text).not.toContain('<textarea');
    expect(shown.text).toContain('/lists/runs.csv');
    expect((await post('/runs', { text: RUNS }, 'frank')).status).toBe(403);
    expect((await post('/runs/taken', { text: RUNS }, 'frank')).status).toBe(403);
    expect((await play.as('frank').post(api('/tap-lists')).send({ text: TAPS })).status).toBe(403);
    expect((await play.as('stan').get(page('/runs.csv'))).status).toBe(404);
  });
});
