import ExcelJs from 'exceljs';
import { beforeAll, expect, it } from 'vitest';
import { firstCrewPlan } from '../../src/document/crew-plan/first-plan.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { OrderingDocument } from '../../src/document/job-document.ts';
import { readOrderingForm, writeOrderingForm } from '../../src/document/ordering-form.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf, readPage } from '../support/page.ts';

/** Every rule once; all figures invented. */
const RULES: OrderingDocument = {
  spares: [
    { item: 'clamp', percent: 5, minimum: 10, ownerSpares: 2 },
    { item: 'elbow', type: 'demo-250A-3PN', hand: 'inside', minimum: 1 },
    { item: 'section', kind: 'stock', lengthMm: 6096, wastePercent: 2.5 },
    { item: 'tap', kind: 'L9-N 30 A', minimum: 1 },
  ],
  leadDays: [{ item: 'section', days: 42 }],
  plan: 'earliest',
  cordStockMm: [609.6, 914.4],
  closure: { stockMm: 2438.4, wastePercent: 5 },
  washersPerRod: 2,
  braceEverySupports: 4,
  tools: [
    { tool: '=HYPERLINK("x")', perCrew: 2, activity: 'joint', note: '+1' },
    { tool: 'Lift', perCrew: 1, crews: 3 },
  ],
};

it.each(['ft-in', 'metric'] as const)(
  'rules written into their form and read back are the same rules, in %s',
  (units) => {
    const project = { ...demoJob().project, units };
    expect(readOrderingForm(writeOrderingForm(RULES, project), project)).toMatchObject({ ordering: RULES, faults: [] });
  },
);

it('an empty row between two is no rule, and what cannot be read is told at its field', () => {
  const { project } = demoJob();
  const typed = {
    'spares[0].item': '',
    'spares[2].item': 'clamp',
    'spares[2].percent': 'five',
    cordStockMm: '6 ft; long',
  };
  const { ordering, fields, faults } = readOrderingForm(typed, project);
  expect(ordering.spares).toEqual([{ item: 'clamp' }]);
  expect(fields['spares[0].percent']).toBe('five');
  expect(faults.map(({ field }) => field)).toEqual(['spares[0].percent', 'cordStockMm']);
});

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  beforeAll(async () => {
    play = await stage(await open());
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(demoJob());
    id = body.id;
    await play.joinAll(id);
    return () => play.app.close();
  });
  const get = (person: Parameters<Stage['as']>[0], rest: string) => play.as(person).get(`/jobs/${id}/takeoff${rest}`);
  const said = async (person: Parameters<Stage['as']>[0], rest: string) => readPage((await get(person, rest)).text);
  const post = (person: Parameters<Stage['as']>[0], rest: string, body: object) =>
    play.as(person).post(`/jobs/${id}/takeoff${rest}`).type('form').send(body);
  const api = (noun: string) => `/api/v1/projects/${id}/${noun}`;
  const put = async (noun: string, body: object) => {
    const { version } = (await play.as('olive').get(api(noun))).body;
    return play.as('olive').put(api(noun)).set('if-match', `"${version}"`).send(body);
  };

  it('without a crew plan the order list is by floor, has no dates and says why', async () => {
    const list = await said('rita', '/order');
    expect(list).toContain('There is no crew plan, so no thing has a need date');
    expect(list).toMatch(/Floor 1 · one order .*no crew plan: no date/);
    expect(list).not.toContain('is invented');
    expect(list).not.toMatch(/20\d\d-\d\d-\d\d/);
    expect(list).toContain('No rule for spares is stated');
    expect(list).toContain('This is a suggestion: check it and save it');
  });

  it('the office saves rules from the form; who may not change the design sees them worked and no form', async () => {
    expect((await get('frank', '/rules')).status).toBe(403);
    const fields = fieldsOf((await get('olive', '/rules')).text);
    expect(fields['tools[2].tool']).toBe('Seating tool for demo-250A-3PN');
    const { project } = demoJob();
    const sent = { version: fields.version, ...writeOrderingForm(RULES, project) };
    const bad = await post('olive', '/rules', { ...sent, 'spares[0].percent': '-5' });
    expect(bad.status).toBe(422);
    expect(readPage(bad.text)).toContain('Rule 1, spares');
    expect((await post('frank', '/rules', sent)).status).toBe(403);
    expect((await post('olive', '/rules', sent)).status).toBe(303);
    expect((await play.as('rita').get(api('ordering'))).body.document).toEqual(RULES);
    expect((await post('olive', '/rules', sent)).status).toBe(412);
    const heading = (await play.as('olive').get(`/api/v1/projects/${id}`)).body.document;
    expect(heading.ordering).toEqual(RULES);
  });

  it('saving the heading of the job leaves the rules alone', async () => {
    const fields = fieldsOf((await play.as('olive').get(`/jobs/${id}/settings`)).text);
    const answer = await play.as('olive').post(`/jobs/${id}/settings`).type('form').send(fields);
    expect(answer.status).toBe(303);
    expect((await play.as('rita').get(api('ordering'))).body.document).toEqual(RULES);
  });

  it('spares are worked over the whole job, and a rule that fits nothing is named', async () => {
    const list = await said('rita', '/order');
    const [, clamps] = /joint clamp demo-250A-3PN (\d+) 0 \(0 %\)/.exec(list) ?? [];
    // 5 % of the clamps, rounded up by hand in whole numbers.
    const spares = Math.floor((Number(clamps) * 5 + 99) / 100);
    expect(list).toContain(`joint clamp demo-250A-3PN ${clamps} 0 (0 %) ${spares} (5 %, at least 10) 2 each`);
    expect(list).toContain('Fits nothing that is counted, so nothing is ordered by it: the rule for tap-off L9-N 30 A');
    expect(list).toContain('elbow, conductors inside the bend demo-250A-3PN spare 1 each');
  });

  it('drops that no stock length reaches are named with what to do, and the strips with their lengths', async () => {
    const list = await said('rita', '/order?level=F2');
    expect(list).toContain('240 drops are longer than the longest cord in stock');
    expect(list).toContain(`The drop of tap-off T01 is 4'-0"; the longest cord in stock is 3'-0"`);
    expect(list).toContain('add a stock length');
    expect(list).toContain(`Ordered by level in strips of 8'-0", cut by a plan, with 5 % waste`);
  });

  it('with a crew plan things stand by floor and need date, with the last day to order', async () => {
    expect((await put('crew-plan', firstCrewPlan('2026-12-07'))).status).toBe(200);
    const list = await said('frank', '/order?level=F1');
    // The hangers' crew begins on the first floor on the first day; sections have a lead time of 42 days.
    expect(list).toMatch(/no lead time 2026-12-07 Hangers hanger demo-250A-3PN the work \d+/);
    const [, by = '', needed = ''] = /(\d{4}-\d\d-\d\d)(?:, past)? (\S+) Sections and joints section/.exec(list) ?? [];
    expect((Date.parse(needed) - Date.parse(by)) / 86_400_000).toBe(42);
    expect(list).not.toMatch(/Floor 2 · \d orders/);
    expect(await said('frank', '/order')).toMatch(/Whole job · \d orders/);
    // The dates rest on the hours, and those on a book that is nobody's.
    expect(list).toContain('is invented: its hours, factors and crew are nobody’s');
  });

  // The first leg of the run round the corner is laid 20/10/20/10, so its elbow is the fifth piece.
  it('a line of the order opens to run, distance and mark, and to all its places in pages', async () => {
    const { text } = await get('rita', '/order?level=F3');
    const elbow =
      /<details class="working"><summary>1<span class="unseen"> elbow[\s\S]*?<\/details>/.exec(text)?.[0] ?? '';
    expect(readPage(elbow)).toContain(`F3-R06-A 1 at 60'-0" P05`);
    const href = /href="([^"]+)"/.exec(elbow)?.[1]?.replaceAll('&amp;', '&') ?? '';
    const list = readPage((await play.as('rita').get(href)).text);
    expect(list).toContain('elbow, conductors inside the bend · 1 each, counted from one place');
    expect(list).toContain(`F3-R06-A P05 60'-0"`);
  });

  it('the places of a line over the whole job come in pages of 200', async () => {
    const first = await said('rita', '/places?of=takeoff&item=label&type=demo-250A-3PN');
    const [, total] = /counted from ([\d,]+) places/.exec(first) ?? [];
    expect(first).toContain(`places 1 to 200 of ${total?.replace(',', '')}`);
    const next = await said('rita', '/places?of=takeoff&item=label&type=demo-250A-3PN&page=2');
    expect(next).toContain(`places 201 to 400 of ${total?.replace(',', '')}`);
    expect(await said('rita', '/places?of=takeoff&item=clamp&type=no-such')).toContain(
      'Nothing in this takeoff is counted',
    );
  });

  it('the CSV of the order guards formulas, has a mark for each piece and no money', async () => {
    const extras = demoJob().extras ?? [];
    const sly = { item: '=1+1', level: 'F1', quantity: 1, unit: '@each', price: 777_777 };
    expect((await put('extras', [...extras, sly])).status).toBe(200);
    const { text, headers } = await get('frank', '/order.csv?level=F1');
    expect(headers['content-disposition']).toBe('attachment; filename="DEMO-1-order-F1.csv"');
    const lines = text.trim().split('\r\n');
    expect(lines.find((line) => line.includes("'=1+1"))).toContain("added by hand,'=1+1,");
    expect(text).not.toMatch(/777|,=|,@/);
    const sections = lines.find((line) => line.includes(',section,stock,') && line.includes(`20'-0"`));
    expect(sections).toContain('F1-R01-A: P01, P02, P03; ');
  });

  it('the workbook holds order list, spares and tools, with sums that can be traced and no formula of anybody else', async () => {
    const answer = await get('frank', '.xlsx').responseType('blob');
    const workbook = new ExcelJs.Workbook();
    await workbook.xlsx.load(answer.body);
    expect(workbook.worksheets.map(({ name }) => name)).toEqual([
      'Job',
      'By level',
      'Counted',
      'Order list',
      'Spares',
      'Tools',
    ]);
    const spares = workbook.getWorksheet('Spares');
    const row = spares?.getColumn(1).values.indexOf('joint clamp') ?? -1;
    // 195 joints of two clamps: 5 % of 390 are 19.5.
    expect(spares?.getCell(row, 4).value).toBe(390);
    expect(spares?.getCell(row, 9).value).toEqual({
      formula: `MAX(H${row},ROUNDUP(ROUND(D${row}*G${row}/100,6),0))`,
      result: 20,
    });
    expect(spares?.getCell(row, 11).value).toMatchObject({ formula: `D${row}+F${row}+I${row}+J${row}`, result: 412 });
    const tools = workbook.getWorksheet('Tools');
    expect(tools?.getCell('A4').value).toBe('=HYPERLINK("x")'); // text, not a formula
    expect(tools?.getCell('D4').value).toEqual({ formula: 'B4*C4', result: 2 });
    expect(tools?.getCell('D5').value).toEqual({ formula: 'B5*C5', result: 3 });
    const list = workbook.getWorksheet('Order list');
    expect(list?.getColumn(6).values).toContain('=1+1, added by hand');
    expect(list?.getColumn(12).values.join()).toContain('F1-R01-A: P01, P02, P03');
    const words = workbook.worksheets.flatMap((sheet) => sheet.getSheetValues().map((row) => JSON.stringify(row)));
    expect(words.join()).not.toMatch(/USD|\$|[Pp]rice|777/);
  });

  it('lines by hand are the office’s, and marked as such in takeoff, order list and hours', async () => {
    expect((await get('frank', '/by-hand')).status).toBe(403);
    expect((await play.as('frank').get(api('extras'))).status).toBe(403);
    const fields = fieldsOf((await get('olive', '/by-hand')).text);
    const { version, ...lines } = fields;
    const bad = await post('olive', '/by-hand', { ...fields, 'extras[9].item': 'Nothing of it' });
    expect(bad.status).toBe(422);
    const sent = {
      version,
      ...lines,
      'extras[9].item': 'Crane day',
      'extras[9].quantity': '2',
      'extras[9].unit': 'day',
      'extras[9].hours': '4',
    };
    expect((await post('olive', '/by-hand', sent)).status).toBe(303);
    expect(await said('rita', '')).toContain('Crane day, added by hand 2 day');
    expect(await said('rita', '/order')).toMatch(/added by hand: no date.* Crane day, added by hand/);
    expect(readPage((await play.as('rita').get(`/jobs/${id}/hours`)).text)).toContain('added by hand');
  });

  it('a busway type that is renamed keeps its rules, and one that is named in a rule is not lost by renaming', async () => {
    const { items } = (await play.as('olive').get(api('busway-types'))).body;
    const [{ id: typeId, version, document }] = items;
    const answer = await play
      .as('olive')
      .put(`${api('busway-types')}/${typeId}`)
      .set('if-match', `"${version}"`)
      .send({ ...document, id: 'renamed-250A' });
    expect(answer.status, JSON.stringify(answer.body)).toBe(200);
    const { spares } = (await play.as('rita').get(api('ordering'))).body.document;
    expect(spares.map(({ type }: { type?: string }) => type)).toEqual([
      undefined,
      'renamed-250A',
      undefined,
      undefined,
    ]);
  });

  it('setting the rules is a step of the design that can be taken back', async () => {
    expect((await put('ordering', {})).status).toBe(200);
    expect((await play.as('rita').get(api('ordering'))).body.document).toBeNull();
    expect(await said('rita', '/order')).toContain('No rule for spares is stated');
    const [step] = (await play.as('olive').get(api('design-steps'))).body.items;
    const undone = await play
      .as('olive')
      .post(`${api('design-steps')}/${step.id}/undo`)
      .send({});
    expect(undone.status, JSON.stringify(undone.body)).toBe(201);
    expect((await play.as('rita').get(api('ordering'))).body.document.leadDays).toEqual(RULES.leadDays);
  });
});

forEachDatabase((open) => {
  it('what the owner furnishes says so in the list, its file and its workbook, to the floor as well and without a price', async () => {
    const play = await stage(await open());
    const job = demoJob();
    const bid = { ...job.bid, ownerFurnished: ['tap' as const] };
    const { body } = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send({ ...job, bid });
    expect(body.errors).toBeUndefined();
    await play.joinAll(body.id);
    const said = readPage((await play.as('frank').get(`/jobs/${body.id}/takeoff/order?level=F2`)).text);
    expect(said).toMatch(/tap-off L1-N 30 A demo-250A-3PN the work, the owner furnishes it/);
    expect(said).toMatch(/end cap demo-250A-3PN the work \d/);
    expect(said).not.toMatch(/\$\d/);
    const { text } = await play.as('frank').get(`/jobs/${body.id}/takeoff/order.csv?level=F2`);
    expect(text).toMatch(/"?the work, the owner furnishes it"?,tap/);
    await play.app.close();
  });
});
