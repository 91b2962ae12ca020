import ExcelJs from 'exceljs';
import { beforeAll, expect, it } from 'vitest';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { readPage } from '../support/page.ts';
import { scenarioT2 } from '../support/scenarios.ts';

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  let database: Awaited<ReturnType<typeof open>>;
  beforeAll(async () => {
    database = await open();
    play = await stage(database);
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(scenarioT2());
    id = body.id;
    await play.joinAll(id);
    return () => play.app.close();
  });
  const page = async (person: Parameters<Stage['as']>[0] = 'olive') =>
    readPage((await play.as(person).get(`/jobs/${id}/bid`)).text);
  const read = async () => (await play.as('olive').get(`/api/v1/projects/${id}/bid`)).body;
  const set = async (body: object, version?: number) =>
    play
      .as('olive')
      .put(`/api/v1/projects/${id}/bid`)
      .set('if-match', `"${version ?? (await read()).version}"`)
      .send(body);

  it('shows the worked bid with how every line came about', async () => {
    const said = await page();
    expect(said).toContain('$1,263,100.00');
    expect(said).toContain('7 % of $1,263,100.00');
    expect(said).toMatch(/2,42[34]\.\d\d h likely × \$102\.15 a productive hour/);
    expect(said).toContain('markup 6 % on');
    expect(said).toContain('is invented: its hours, factors and crew are nobody’s');
    expect(said).toContain('margin 5.66 % of the price');
  });

  it('is the office’s alone, page and API', async () => {
    for (const person of ['frank', 'quinn', 'owen', 'rita'] as const) {
      expect((await play.as(person).get(`/jobs/${id}/bid`)).status, person).toBe(403);
      expect((await play.as(person).get(`/api/v1/projects/${id}/bid`)).status, person).toBe(403);
    }
    expect((await play.as('olive').get(`/jobs/${id}/hours`)).text).toContain(`/jobs/${id}/bid`);
    expect((await play.as('frank').get(`/jobs/${id}/hours`)).text).not.toContain(`/jobs/${id}/bid`);
  });

  it('an entry that is set changes the price at once; on an older reading it is refused with what stands', async () => {
    const before = await read();
    expect((await set({ ...before.document, overheadPercent: 12 })).status).toBe(200);
    expect(await page()).toContain('12 % of');
    const late = await set({ ...before.document, overheadPercent: 20 }, before.version);
    expect(late.status).toBe(412);
    expect(await page()).toContain('12 % of');
    expect((await set(before.document)).body).toEqual(before); // equal entries, equal version
  });

  it('a margin of 100 % is told beside its field, and what was typed stays', async () => {
    const { text } = await play.as('olive').get(`/jobs/${id}/bid`);
    const version = /name="version" value="(\d+)"/.exec(text)?.[1];
    const csrf = /name="_csrf" value="([^"]+)"/.exec(text)?.[1];
    const answer = await play
      .as('olive')
      .post(`/jobs/${id}/bid`)
      .type('form')
      .send({ _csrf: csrf, version, materials: '1,000', 'profit.kind': 'margin', 'profit.percent': '100' });
    expect(answer.status).toBe(422);
    expect(readPage(answer.text)).toContain('A margin of 100 % cannot be reached at any price.');
    expect(answer.text).toContain('value="1,000"');
    expect((await read()).document.materials).toBe(126_310_000);
  });

  it('a bond by a scale is entered in steps, and each shows in how the bond came about', async () => {
    const before = await read();
    const { text } = await play.as('olive').get(`/jobs/${id}/bid`);
    const own = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(text)?.[1];
    const fields = {
      ...{ _csrf: own('_csrf'), version: own('version'), materials: '1,263,100', 'bond.of': 'cost' },
      ...{ 'bond.percent': '1', 'bond.scale[0].amount': '100,000', 'bond.scale[0].percent': '2.5' },
    };
    await play.as('olive').post(`/jobs/${id}/bid`).type('form').send(fields).expect(303);
    expect((await read()).document.bond).toEqual({
      percent: 1,
      of: 'cost',
      scale: [{ amount: 10_000_000, percent: 2.5 }],
    });
    expect(await page()).toMatch(
      /2\.5 % of the first \$100,000\.00 \+ 1 % of the next \$[\d,.]+: of \$[\d,.]+, cost with overhead/,
    );
    await set(before.document);
  });

  it('a lot that lacks tap-offs leaves them to be priced, says what else it holds, and two taxes on it are told together', async () => {
    const before = await read();
    const { materials: _sum, taxPercent: _tax, ...rest } = before.document;
    const lot = {
      ...{ id: 'L', package: 'Busway', supplier: 'Invented Supply', chosen: true, freight: 'in', tax: 'out' },
      lines: [
        { item: 'lot', state: 'priced', amount: 90_000_000 },
        { item: 'support', state: 'included' },
        { item: 'tap', state: 'lacks' },
      ],
    };
    const taxes = [
      { name: 'State', percent: 6.25, on: ['materials'] },
      { name: 'County', percent: 1.5, on: ['materials'] },
    ];
    expect((await set({ ...rest, quotes: [lot], taxes })).status).toBe(200);
    const said = await page();
    // 960 tap-offs at the 620.00 of their type, and the lot.
    expect(said).toContain(
      'takeoff at the prices of its types $595,200.00 + Busway: Invented Supply $900,000.00 $1,495,200.00',
    );
    expect(said).toMatch(
      /What the chosen quotes take the place of.*hanger [\d,]+ quote L, which names it.*drop cord 960 quote L, as part of the lot/,
    );
    expect(said).toContain('"State" and "County" are both on materials, 7.75 % together');
    expect(said).toMatch(/Sales tax: State 6\.25 % of \$1,495,200\.00.*Sales tax: County 1\.5 % of \$1,495,200\.00/);
    await set(before.document);
  });

  it('what the owner furnishes is ticked, named with the price and neither bought nor taxed', async () => {
    const before = await read();
    const { text } = await play.as('olive').get(`/jobs/${id}/bid`);
    const own = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(text)?.[1];
    const fields = { _csrf: own('_csrf'), version: own('version'), taxPercent: '7', 'ownerFurnished.tap': 'yes' };
    expect((await play.as('olive').post(`/jobs/${id}/bid`).type('form').send(fields)).status).toBe(303);
    expect((await read()).document).toMatchObject({ ownerFurnished: ['tap'] });
    const said = await page();
    expect(said).toContain('Furnished by the owner, installed by us tap-offs');
    expect(said).not.toMatch(/tap-off, [^,]+ demo/);
    await set(before.document);
  });

  it('spares by the rules for ordering are in the price: named where no type prices them, or a sum in their place', async () => {
    const before = await read();
    const order = async (rules: object) => {
      const { version } = (await play.as('olive').get(`/api/v1/projects/${id}/ordering`)).body;
      const put = play.as('olive').put(`/api/v1/projects/${id}/ordering`).set('if-match', `"${version}"`);
      expect((await put.send(rules)).status).toBe(200);
    };
    const caps = { item: 'end-cap', percent: 5, ownerSpares: 4, wastePercent: 1 };
    await order({ spares: [caps, { item: 'label', minimum: 7 }] });
    // 48 end caps: 5 % are 2.4, so 3, with 4 for the owner and 1 for waste; at the 95.00 of their type. No type prices labels.
    const said = await page();
    expect(said).toMatch(/Spares by the rules for ordering, at the prices of the types, below \$760\.00/);
    expect(said).toContain('No price for spares by the rules for ordering: 7 × label');
    await set({ ...before.document, wastePercent: 1 });
    const once = await page();
    expect(once).toMatch(/Spares by the rules for ordering, at the prices of the types, below \$665\.00/);
    expect(once).toContain('the percentage is priced, and those pieces are ordered without being priced again');
    await set({ ...before.document, spares: 480_000 });
    const entered = await page();
    expect(entered).toMatch(/Spares as entered \$4,800\.00/);
    expect(entered).not.toContain('No price for spares');
    await order({});
    await set(before.document);
  });

  it('without quoted material, what has no price is named and the price says that it is not complete', async () => {
    const before = await read();
    const { materials: _quoted, other: _other, ...rest } = before.document;
    await set(rest);
    const said = await page();
    expect(said).toContain('The price is not complete');
    expect(said).toContain('No price for label, slot-closure');
    await set(before.document);
    expect(await page()).not.toContain('not complete');
  });

  /** Sends one of the bid's forms as it stands with some of its fields typed over. */
  const type = async (end: string, fields: Record<string, string>, version?: string) => {
    const { text } = await play.as('olive').get(`/jobs/${id}/bid${end}`);
    const hidden = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(text)?.[1];
    return play
      .as('olive')
      .post(`/jobs/${id}/bid${end}`)
      .type('form')
      .send({ _csrf: hidden('_csrf'), version: version ?? hidden('version'), ...fields });
  };
  const sealers = {
    'quotes[0].id': 'A',
    'quotes[0].package': 'Fire sealing',
    'quotes[0].goesTo': 'subcontracts',
    'quotes[0].supplier': 'An invented sealer',
    'quotes[0].freight': 'out',
    'quotes[0].freightAmount': '125',
    'quotes[0].tax': 'out',
    'quotes[0].chosen': 'yes',
    'quotes[0].lines[1].item': 'fire-seal', // the row above it stays empty
    'quotes[0].lines[1].state': 'priced',
    'quotes[0].lines[1].amount': '900.00',
    'quotes[2].id': 'B',
    'quotes[2].package': 'Fire sealing',
    'quotes[2].goesTo': 'subcontracts',
    'quotes[2].supplier': 'Another one',
    'quotes[2].freight': 'in',
    'quotes[2].tax': 'out',
    'quotes[2].lines[0].item': 'fire-seal',
    'quotes[2].lines[0].state': 'priced',
    'quotes[2].lines[0].amount': '850',
    'quotes[2].lines[1].item': 'label',
    'quotes[2].lines[1].state': 'lacks',
    'quotes[2].lines[1].amount': '300',
  };

  it('quotes are entered in a form of their own, stand side by side, and the chosen one is in the price', async () => {
    const before = await read();
    expect((await type('/quotes', sealers)).status).toBe(303);
    const after = await read();
    expect({ ...after.document, quotes: undefined }).toEqual({ ...before.document, quotes: undefined });
    const said = readPage((await play.as('olive').get(`/jobs/${id}/bid/quotes`)).text);
    expect(said).toContain('Fire sealing · lowest level total: A');
    expect(said).toMatch(/labels not said lacks; plug \$300\.00/);
    expect(said).toMatch(/Level total \$1,025\.00 \$1,150\.00/);
    const { body: built } = await play.as('olive').get(`/api/v1/projects/${id}/bid/build-up`);
    const amount = (line: string) => built.lines.find((one: { line: string }) => one.line === line)?.amount;
    expect([amount('subcontracts'), amount('freight')]).toEqual([90_000, 12_500]);
    expect(built.lines.reduce((sum: number, one: { amount: number }) => sum + one.amount, 0)).toBe(built.price);
    await set(before.document);
  });

  it('what is wrong in a row is told beside that row, and all that was typed stays', async () => {
    const answer = await type('/quotes', { ...sealers, 'quotes[2].currency': 'EUR', 'quotes[0].lines[1].amount': '' });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('id="f-quotes-2--currency-fault"');
    expect(answer.text).toContain('id="f-quotes-0--lines-1--amount-fault"');
    const said = readPage(answer.text);
    expect(said).toContain('Quote "B" of Another one is in EUR and the job in USD');
    expect(said).toContain('Amount of line 2 of quote 1');
    expect(answer.text).toContain('value="An invented sealer"');
    expect((await read()).document.quotes).toBeUndefined();
  });

  it('10 % without saying whether it is a markup or a margin is asked about (bad entry 38)', async () => {
    const answer = await type('', { 'profit.kind': '', 'profit.percent': '10' });
    expect(answer.status).toBe(422);
    expect(readPage(answer.text)).toContain(
      '10 % as a markup is 9.1 % of the price; 10 % as a margin is 11.1 % on cost.',
    );
    expect(answer.text).toContain('id="f-profit-kind-fault"');
  });

  it('of two people at two forms of one bid, the second is told before anything of the first is lost', async () => {
    const before = await read();
    const first = await type('/costs', { 'subcontracts[0].item': 'Testing', 'subcontracts[0].amount': '8,000' });
    expect(first.status).toBe(303);
    const late = await type('/offer', { exclusions: 'Painting' }, String(before.version));
    expect(late.status).toBe(412);
    expect(readPage(late.text)).toContain('Somebody changed this while you did.');
    expect(late.text).toContain('Painting</textarea>');
    expect((await read()).document).toMatchObject({ subcontracts: [{ item: 'Testing', amount: 800_000 }] });
    expect((await type('/offer', { exclusions: 'Painting' })).status).toBe(303);
    expect((await read()).document).toMatchObject({ exclusions: ['Painting'], subcontracts: [{ item: 'Testing' }] });
    await set(before.document);
  });

  it('of two people who each add a row, both rows are kept; of one that both changed, the second says which', async () => {
    const before = await read();
    const rows = { 'subcontracts[0].item': 'Testing', 'subcontracts[0].amount': '8,000' };
    await type('/costs', rows).then(({ status }) => expect(status).toBe(303));
    const opened = await play.as('olive').get(`/jobs/${id}/bid/costs`);
    const hidden = (text: string, name: string) =>
      (new RegExp(`name="${name}" value="([^"]*)"`).exec(text)?.[1] ?? '').replaceAll('&quot;', '"');
    const theirs = { ...rows, 'subcontracts[1].item': 'Fire sealing', 'subcontracts[1].amount': '900' };
    expect((await type('/costs', theirs)).status).toBe(303);
    const mine = {
      ...{ 'subcontracts[0].item': 'Testing', 'subcontracts[0].amount': '8,500' },
      ...{ 'subcontracts[1].item': 'Crane', 'subcontracts[1].amount': '1,200' },
    };
    const send = (text: string, fields: object) =>
      play
        .as('olive')
        .post(`/jobs/${id}/bid/costs`)
        .type('form')
        .send({
          _csrf: hidden(text, '_csrf'),
          version: hidden(text, 'version'),
          base: hidden(text, 'base'),
          ...fields,
        });
    const late = await send(opened.text, mine);
    expect(late.status).toBe(412);
    expect(readPage(late.text)).toContain('You changed different entries: theirs are taken into the form below');
    const fieldsOf = (text: string) =>
      Object.fromEntries(
        [...text.matchAll(/name="(subcontracts[^"]+(?:item|amount))"[^>]*? value="([^"]*)"/g)].map(
          ([, name, value]) => [name, value],
        ),
      );
    expect(Object.values(fieldsOf(late.text)).filter((text) => text !== '')).toEqual([
      'Testing',
      '8,500',
      'Fire sealing',
      '900.00',
      'Crane',
      '1,200',
    ]);
    // While it was read, the other one changes the price of testing as well: now both have.
    await type('/costs', { ...theirs, 'subcontracts[0].amount': '7,000' });
    const again = await send(late.text, fieldsOf(late.text));
    expect(again.status).toBe(412);
    const said = readPage(again.text);
    expect(said).toContain('Entries that both of you changed');
    expect(said).toMatch(/Amount of subcontract 1\s+8,500\s+7000\.00/);
    expect((await send(again.text, fieldsOf(again.text))).status).toBe(303);
    expect(
      (await read()).document.subcontracts.map((row: { item: string; amount: number }) => [row.item, row.amount]),
    ).toEqual([
      ['Testing', 850_000],
      ['Fire sealing', 90_000],
      ['Crane', 120_000],
    ]);
    await set(before.document);
  });

  it('what was typed with something wrong in it is still told of a save that came between', async () => {
    const before = await read();
    const { text } = await play.as('olive').get(`/jobs/${id}/bid/costs`);
    const hidden = (of: string, name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(of)?.[1];
    const send = (of: string, amount: string) =>
      play
        .as('olive')
        .post(`/jobs/${id}/bid/costs`)
        .type('form')
        .send({
          ...{ _csrf: hidden(of, '_csrf'), version: hidden(of, 'version') },
          ...{ 'subcontracts[0].item': 'Crane', 'subcontracts[0].amount': amount },
        });
    await type('/costs', { 'subcontracts[0].item': 'Testing', 'subcontracts[0].amount': '8,000' });
    const wrong = await send(text, 'much');
    expect(wrong.status).toBe(422);
    expect((await send(wrong.text, '1,200')).status).toBe(412);
    await set(before.document);
  });

  it('the forms and the build-up are the office’s alone too', async () => {
    for (const person of ['frank', 'owen', 'rita'] as const) {
      for (const end of ['/quotes', '/costs', '/offer'])
        expect((await play.as(person).get(`/jobs/${id}/bid${end}`)).status, person).toBe(403);
      expect((await play.as(person).get(`/api/v1/projects/${id}/bid/build-up`)).status, person).toBe(403);
    }
  });

  it('a frozen bid keeps its alternates, unit prices and quotes, and they stand beside those of now', async () => {
    const before = await read();
    const alternate = { name: 'Meters', kind: 'add', materials: 1_000_000 };
    await set({ ...before.document, alternates: [alternate], unitPrices: [{ item: 'tap', offered: 50_000 }] });
    const path = `/api/v1/projects/${id}/frozen-bids`;
    const { body: kept } = await play.as('olive').post(path).set('idempotency-key', 'k0').send({ name: 'With meters' });
    await set({ ...before.document, alternates: [{ ...alternate, materials: 2_000_000 }] });
    const whole = (await play.as('olive').get(`${path}/${kept.id}`)).body;
    expect(whole).toMatchObject({ sound: true, figures: { alternates: [{ name: 'Meters', kind: 'add' }] } });
    const said = readPage((await play.as('olive').get(`/jobs/${id}/bid/frozen/${kept.id}`)).text);
    expect(said).toMatch(/Meters \$12,[\d,.]+ \$2\d,[\d,.]+ \+\$1/);
    expect(said).toMatch(/tap-offs \$500\.00 –/);
    await set(before.document);
  });

  it('a frozen bid stays as it was when the job changes, and stands beside the new one line by line', async () => {
    const olive = play.as('olive');
    const { contingencyP: _none, ...plain } = (await read()).document;
    await set(plain);
    const path = `/api/v1/projects/${id}/frozen-bids`;
    const freeze = (name: string, key: string) => olive.post(path).set('idempotency-key', key).send({ name });
    const { body: first } = await freeze('Bid day', 'k1');
    expect((await freeze('Bid day', 'k1')).body).toEqual(first); // a second tap freezes nothing more
    const whole = (await olive.get(`${path}/${first.id}`)).body;
    expect(whole.sound).toBe(true);
    expect(Math.round(whole.figures.cost / 100)).toBe(1_783_755);

    // Addendum 2: the ceiling is tight on every level.
    const { body: document } = await olive.get(`${path}/${first.id}/document`);
    for (const level of (await olive.get(`/api/v1/projects/${id}/levels?limit=100`)).body.items) {
      const conditions = { ...level.document.conditions, congestion: 'tight' };
      await olive
        .put(`/api/v1/projects/${id}/levels/${level.id}`)
        .set('if-match', `"${level.version}"`)
        .send({ ...level.document, conditions });
    }
    expect((await olive.get(`${path}/${first.id}`)).body).toEqual(whole);
    expect((await olive.get(`${path}/${first.id}/document`)).body).toEqual(document);
    const said = readPage((await olive.get(`/jobs/${id}/bid/frozen/${first.id}`)).text);
    expect(said).toMatch(/Labour \$247,61\d\.\d\d \$2[78]\d,\d{3}\.\d\d \+\$/);
    expect(said).toMatch(/Material \$1,263,100\.00 \$1,263,100\.00 none/);

    const { body: second } = await freeze('Addendum 2', 'k2');
    const beside = readPage((await olive.get(`/jobs/${id}/bid/frozen/${first.id}?beside=${second.id}`)).text);
    expect(beside).toContain('Addendum 2');
    expect((await olive.get(path)).body.items.map(({ name }: { name: string }) => name).sort()).toEqual([
      'Addendum 2',
      'Bid day',
      'With meters',
    ]);
  });

  it('a frozen bid whose figures were changed behind the program’s back says that it is not to be relied on', async () => {
    const path = `/api/v1/projects/${id}/frozen-bids`;
    const { body: kept } = await play.as('olive').post(path).set('idempotency-key', 'k3').send({ name: 'Touched' });
    const row = await database.db.bidSnapshot.findUniqueOrThrow({ where: { id: kept.id } });
    const touched = JSON.parse(JSON.stringify(row.figures));
    await database.db.bidSnapshot.update({
      where: { id: kept.id },
      data: { figures: { ...touched, price: touched.price + 1 } },
    });
    expect((await play.as('olive').get(`${path}/${kept.id}`)).body.sound).toBe(false);
    const said = readPage((await play.as('olive').get(`/jobs/${id}/bid/frozen/${kept.id}`)).text);
    expect(said).toContain('do not rely on them');
  });

  it('a frozen bid needs a name and the office, and cannot be changed or taken away', async () => {
    const path = `/api/v1/projects/${id}/frozen-bids`;
    const nameless = await play.as('olive').post(path).send({ name: ' ' });
    expect(nameless.status).toBe(422);
    expect(nameless.body.errors[0]).toMatchObject({ path: 'name', message: 'A frozen bid needs a name.' });
    const [{ id: one }] = (await play.as('olive').get(path)).body.items;
    for (const person of ['frank', 'rita', 'owen'] as const) {
      expect((await play.as(person).get(path)).status).toBe(403);
      expect((await play.as(person).get(`${path}/${one}`)).status).toBe(403);
      expect((await play.as(person).get(`/jobs/${id}/bid/frozen/${one}`)).status).toBe(403);
    }
    for (const method of ['put', 'delete', 'patch'] as const)
      expect((await play.as('olive')[method](`${path}/${one}`).send({})).status).toBe(404);
  });

  it('the bid is a workbook for the office, the takeoff one for everybody and without money', async () => {
    const load = async (person: Parameters<Stage['as']>[0], path: string) => {
      const answer = await play.as(person).get(path).responseType('blob');
      expect(answer.status).toBe(200);
      const workbook = new ExcelJs.Workbook();
      await workbook.xlsx.load(answer.body);
      return workbook;
    };
    expect((await load('olive', `/jobs/${id}/bid.xlsx`)).worksheets.map(({ name }) => name)).toContain('Price');
    expect((await load('olive', `/jobs/${id}/bid-summary.xlsx`)).worksheets.map(({ name }) => name)).toContain(
      'Summary',
    );
    expect((await load('olive', `/jobs/${id}/bid-client.xlsx`)).worksheets.map(({ name }) => name)).toContain('Bid');
    for (const name of ['bid', 'bid-summary', 'bid-client'])
      expect((await play.as('frank').get(`/jobs/${id}/${name}.xlsx`)).status, name).toBe(403);
    const takeoff = await load('frank', `/jobs/${id}/takeoff.xlsx`);
    expect(takeoff.worksheets.map(({ name }) => name)).toEqual([
      'Job',
      'By level',
      'Counted',
      'Order list',
      'Spares',
      'Tools',
    ]);
    const words = takeoff.worksheets.flatMap((sheet) => sheet.getSheetValues().map((row) => JSON.stringify(row)));
    expect(words.join()).not.toMatch(/USD|\$|[Pp]rice/);
    const caps = takeoff.getWorksheet('Job')?.getColumn(1).values.indexOf('end cap') ?? -1;
    expect(takeoff.getWorksheet('Job')?.getCell(caps, 5).value).toBe(48);
  });
});
