import ExcelJs from 'exceljs';
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import { type Person, type Stage, stage } from '../support/cast.ts';
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
  /** One floor of the demo: as true, and sooner laid out. */
  const small = (changes: Partial<JobDocument['project']> = {}): JobDocument => {
    const demo = demoJob();
    const [first] = demo.levels;
    return {
      ...demo,
      project: { ...demo.project, number: `SH-${++made}`, ...changes },
      levels: [first!],
      runs: demo.runs.filter((run) => run.level === first?.id).slice(0, 2),
      extras: [],
    };
  };
  const bring = async (document: JobDocument) => {
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(document);
    await play.joinAll(body.id);
    return body.id as string;
  };
  beforeEach(async () => {
    id = await bring(small());
  });
  const api = (rest = '', job = id) => `/api/v1/projects/${job}/labour-book${rest}`;
  const book = async (job = id) => (await play.as('olive').get(api('', job))).body;
  const keep = (body: object, person: Person = 'olive') => play.as(person).post(api('/shelf')).send(body);
  const set = async (change: object, job = id) => {
    const { version, document } = await book(job);
    return play
      .as('olive')
      .put(api('', job))
      .set('if-match', `"${version}"`)
      .send({ ...document, ...change });
  };
  const page = async (rest: string) => readPage((await play.as('olive').get(`/jobs/${id}/labour-book${rest}`)).text);

  it('a job without a book can take the invented one that comes with the program, in any money, and undo it', async () => {
    const { labourBook: _none, ...plain } = small({ currency: 'CHF' });
    id = await bring(plain as JobDocument);
    const empty = readPage((await play.as('olive').get(`/jobs/${id}/hours`)).text);
    expect(empty).toContain('Take one of the company’s books, or the invented one');
    expect(readPage((await play.as('frank').get(`/jobs/${id}/hours`)).text)).not.toContain('the invented one');
    expect(await page('/shelf')).toMatch(/The invented book that comes with the program ?: nobody’s hours/);
    expect(await page('/shelf/shipped')).toContain('The book that comes with the program, demo-1 (invented)');
    const sent = { version: '1' };
    const taken = await play.as('olive').post(`/jobs/${id}/labour-book/shelf/shipped`).type('form').send(sent);
    expect(taken.status).toBe(303);
    expect((await book()).document).toEqual(demoJob().labourBook);
    expect(readPage((await play.as('olive').get(`/jobs/${id}/hours`)).text)).toContain('is invented');
    expect((await play.as('olive').get(api('/shelf/nothing'))).status).toBe(404);
    expect((await play.as('frank').get(api('/shelf/shipped'))).status).toBe(403);
    const { items } = (await play.as('olive').get(`/api/v1/projects/${id}/design-steps`)).body;
    expect((await play.as('olive').post(`/api/v1/projects/${id}/design-steps/${items[0].id}/undo`)).status).toBe(201);
    expect((await book()).document).toBeNull();
  });

  it('a job’s book is kept whole as a version, the job takes that version, and nothing changes it later', async () => {
    const before = await book();
    const kept = await keep({ name: 'Shop hours', version: `A-${made}`, note: 'From three jobs' });
    expect(kept.status).toBe(201);
    expect(kept.body).toMatchObject({ name: 'Shop hours', madeBy: 'Olive Fenn', currency: 'USD', inThisJob: true });
    expect((await book()).document).toEqual({ ...before.document, version: `A-${made}` });
    await set({ nonProductivePercent: 20 });
    const { body } = await play.as('olive').get(api(`/shelf/${kept.body.id}`));
    expect(body.document).toEqual({ ...before.document, version: `A-${made}` });
    expect(body.inThisJob).toBe(false);
    const again = await keep({ name: 'Shop hours', version: `A-${made}` });
    expect(again.status).toBe(409);
  });

  it('taking a version lists every value that changes with hours and cost before and after, and is one step that is undone', async () => {
    const name = `Field ${made}`;
    const { body: kept } = await keep({ name, version: '2', note: '' });
    const { document } = await book();
    const activities = { ...document.activities, joint: { ...document.activities.joint, likely: 0.7 } };
    await set({ version: '3', activities, nonProductivePercent: 10 });
    const { body: difference } = await play.as('olive').get(api(`/shelf/${kept.id}/difference`));
    expect(difference.changes).toEqual([
      { part: 'book', name: 'version', length: '', column: 'value', before: '3', after: '2' },
      { part: 'book', name: 'non-productive %', length: '', column: 'value', before: '10', after: '6' },
      { part: 'activity', name: 'joint', length: '', column: 'likely', before: '0.7', after: '0.6' },
    ]);
    const { body: now } = await play.as('olive').get(`/api/v1/projects/${id}/figures`);
    expect(difference.base.hours.likely).toBeCloseTo(now.labour.hours.likely, 6);
    expect(difference.changed.hours.likely).toBeLessThan(difference.base.hours.likely);
    const said = await page(`/shelf/${kept.id}`);
    expect(said).toContain('3 values change');
    expect(said).toContain('make up joints: likely hours 0.7 0.6');
    expect((await book()).document.version).toBe('3');

    const { version } = await book();
    const taken = await play
      .as('olive')
      .post(`/jobs/${id}/labour-book/shelf/${kept.id}`)
      .type('form')
      .send({ version: version + 1 });
    expect(taken.status).toBe(303);
    expect((await book()).document).toEqual({ ...document, version: '2' });
    const { body: after } = await play.as('olive').get(`/api/v1/projects/${id}/figures`);
    expect(after.labour.hours.likely).toBeCloseTo(difference.changed.hours.likely, 6);
    const { body: steps } = await play.as('olive').get(`/api/v1/projects/${id}/design-steps`);
    const [step] = steps.items ?? steps;
    expect(step.action).toBe(`labour book ${name} 2 taken from the shelf`);
    const undone = await play.as('olive').post(`/api/v1/projects/${id}/design-steps/${step.id}/undo`).send({});
    expect(undone.status).toBeLessThan(300);
    expect((await book()).document.version).toBe('3');
  });

  it('somebody else’s newer book is not written over by one of the shelf', async () => {
    const { body: kept } = await keep({ name: `Late ${made}`, version: '1', note: '' });
    const { version } = await book();
    await set({ nonProductivePercent: 9 });
    const late = await play
      .as('olive')
      .put(api(`/from-shelf/${kept.id}`))
      .set('if-match', `"${version}"`);
    expect(late.status).toBe(412);
    expect((await book()).document.nonProductivePercent).toBe(9);
  });

  it('rates are the office’s alone: nobody else sees the shelf, a book of it, its difference or a sheet', async () => {
    const { body: kept } = await keep({ name: `Office ${made}`, version: '1', note: '' });
    for (const person of ['frank', 'quinn', 'owen', 'rita', 'stan'] as const) {
      const status = person === 'stan' ? 404 : 403;
      for (const path of [
        api('/shelf'),
        api(`/shelf/${kept.id}`),
        api(`/shelf/${kept.id}/difference`),
        api('/sheet'),
        `/jobs/${id}/labour-book/shelf`,
        `/jobs/${id}/labour-book/shelf/${kept.id}`,
        `/jobs/${id}/labour-book.csv`,
        `/jobs/${id}/labour-book.xlsx`,
      ])
        expect((await play.as(person).get(path)).status, `${person} ${path}`).toBe(status);
      expect((await keep({ name: 'Mine', version: '1', note: '' }, person)).status).toBe(status);
      expect(
        (
          await play
            .as(person)
            .put(api(`/from-shelf/${kept.id}`))
            .set('if-match', '"1"')
        ).status,
      ).toBe(status);
      expect((await play.as(person).put(api('/sheet')).set('if-match', '"1"').send({ text: 'x' })).status).toBe(status);
    }
  });

  it('a book with rates in other money is refused with what to do, and the job keeps its own', async () => {
    const { body: kept } = await keep({ name: `Dollars ${made}`, version: '1', note: '' });
    const other = await bring(small({ currency: 'EUR' }));
    const { version } = await book(other);
    const refused = await play
      .as('olive')
      .put(api(`/from-shelf/${kept.id}`, other))
      .set('if-match', `"${version}"`);
    expect(refused.status).toBe(409);
    expect(refused.text).toContain('in USD, and the job’s money is EUR');
  });

  it('the book goes out as CSV and workbook, is edited, shown as what it changes, and comes in whole', async () => {
    const csv = (await play.as('olive').get(`/jobs/${id}/labour-book.csv`)).text;
    expect(csv).toContain('book,version,,,,,,,demo-1 (invented)');
    const { body } = await play
      .as('olive')
      .get(`/jobs/${id}/labour-book.xlsx`)
      .buffer(true)
      .parse((answer, done) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () => done(null, Buffer.concat(parts)));
      });
    const workbook = new ExcelJs.Workbook();
    await workbook.xlsx.load(body);
    const sheet = workbook.worksheets[0]!;
    expect(sheet.headerFooter.oddFooter).toContain('is invented');
    sheet.getCell(sheet.getColumn(2).values.indexOf('joint'), 6).value = 0.65;
    const shown = await play
      .as('olive')
      .post(`/jobs/${id}/labour-book/sheet`)
      .attach('file', Buffer.from(await workbook.xlsx.writeBuffer()), 'book.xlsx');
    expect(shown.status).toBe(200);
    expect(readPage(shown.text)).toContain(
      'One value changes What Now: demo-1 (invented) With the sheet make up joints: likely hours 0.6 0.65',
    );
    expect((await book()).document.activities.joint.likely).toBe(0.6);

    const { version, document } = await book();
    const text = csv.replace('activity,joint,,each,0.51,0.6,', 'activity,joint,,each,0.51,0.65,');
    const taken = await play
      .as('olive')
      .post(`/jobs/${id}/labour-book/sheet/taken`)
      .type('form')
      .send({ version: version + 1, text });
    expect(taken.status).toBe(303);
    const joint = { ...document.activities.joint, likely: 0.65 };
    expect((await book()).document).toEqual({ ...document, activities: { ...document.activities, joint } });
  });

  it('a sheet with faulty cells is refused by row and column with the remedy, and nothing is half written', async () => {
    const before = await book();
    const csv = (await play.as('olive').get(`/jobs/${id}/labour-book.csv`)).text;
    const wrong = csv
      .replace('activity,joint,,each,0.51,0.6,', 'activity,joint,,each,0.51,=0.6,')
      .replace('range,seed', 'range,sead');
    const shown = await play.as('olive').post(`/jobs/${id}/labour-book/sheet`).type('form').send({ text: wrong });
    expect(shown.status).toBe(422);
    const said = readPage(shown.text);
    expect(said).toContain('2 cells to put right; nothing was changed');
    expect(said).toContain('likely =0.6 The cell holds a formula.');
    const refused = await play
      .as('olive')
      .put(api('/sheet'))
      .set('if-match', `"${before.version}"`)
      .send({ text: wrong });
    expect(refused.status).toBe(422);
    expect(await book()).toEqual(before);
  });

  it('a job without a book takes its first one from the shelf, and asks what if before and after', async () => {
    const { body: kept } = await keep({ name: `First ${made}`, version: '1', note: '' });
    const { labourBook: _none, bid: _bid, ...bare } = small();
    const other = await bring(bare);
    const shelf = await play.as('olive').get(`/jobs/${other}/labour-book/shelf`);
    expect(readPage(shelf.text)).toContain(
      'This job has no labour book yet: take one from the shelf, bring a sheet, or start from the invented one.',
    );
    expect((await play.as('olive').get(`/jobs/${other}/labour-book.csv`)).status).toBe(404);
    const asked = await play.as('olive').get(`/jobs/${other}/what-if`).query({ 'learning.rate': '0.9' });
    expect(asked.status).toBe(422);
    expect(readPage(asked.text)).toContain('The job has no labour book, so no hours can differ.');
    const route = { 'routes[0].run': bare.runs[0]!.id, 'routes[0].dropMm': '2 ft' };
    const beside = await play.as('olive').get(`/jobs/${other}/what-if`).query(route);
    expect(beside.status).toBe(200);
    expect(readPage(beside.text)).toContain('Things in another number');
    const shown = await play.as('olive').get(`/jobs/${other}/labour-book/shelf/${kept.id}`);
    expect(readPage(shown.text)).toContain('Labour hours, likely none');
    const taken = await play
      .as('olive')
      .post(`/jobs/${other}/labour-book/shelf/${kept.id}`)
      .type('form')
      .send({ version: 1 });
    expect(taken.status).toBe(303);
    expect((await book(other)).document.version).toBe('1');
  });

  it('the shelf says which book the job works with, and that the shipped one is invented', async () => {
    const { version } = await book();
    expect(version).toBeGreaterThan(0);
    expect(await page('/shelf')).toContain('is invented');
    const name = `Here ${made}`;
    await keep({ name, version: 'v9', note: 'First' });
    expect(await page('/shelf')).toContain(`This job works with ${name} v9, as it stands on the shelf.`);
    await set({ nonProductivePercent: 7 });
    expect(await page('/shelf')).toContain('This job works with version v9 of its own');
  });
});
