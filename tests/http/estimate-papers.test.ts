import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, expect, it } from 'vitest';
import { formatMoney } from '../../src/domain/units/money.ts';
import { type Person, type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { scenarioT2 } from '../support/scenarios.ts';

const BID_PAPERS = ['bid-summary', 'bid-build-up', 'bid-client'] as const;
const TERMS = {
  date: '2026-05-12',
  validUntil: '2026-06-12',
  estimateClass: 2,
  inclusions: ['Busway, tap-off boxes and hangers on four floors'],
  exclusions: ['Feeder conduit and wire'],
  addenda: [{ number: '2', note: 'twelve tap-offs more' }],
  alternates: [{ name: 'Stock on site early', kind: 'add', other: 1_250_000 }],
  unitPrices: [{ item: 'tap', material: 45_000, offered: 61_250 }],
};

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  beforeAll(async () => {
    play = await stage(await open());
    const job = scenarioT2();
    const { body, status } = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send({ ...job, bid: { ...job.bid, ...TERMS } });
    if (status !== 201) throw new Error(JSON.stringify(body));
    id = body.id;
    await play.joinAll(id);
    return () => play.app.close();
  });
  const bytes = async (name: string, person: Person = 'olive') =>
    play
      .as(person)
      .get(`/jobs/${id}/${name}.pdf`)
      .buffer(true)
      .parse((answer, done) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () => done(null, Buffer.concat(parts)));
      });
  /** The lettering as another reader finds it, sheet after sheet. */
  const read = async (name: string): Promise<string> => {
    const { body, headers } = await bytes(name);
    expect(headers['content-type']).toBe('application/pdf');
    return lettering(body);
  };
  const bid = async () => (await play.as('olive').get(`/api/v1/projects/${id}/figures`)).body.bid;
  const money = (minor: number) => formatMoney(minor, 'USD');

  it('a job of 168 levels prints its hours by activity and by level, each summing to the same', async () => {
    const job = scenarioT2();
    const levels = Array.from({ length: 168 }, (_, i) => ({
      ...job.levels[0]!,
      id: `L${i}`,
      name: `Storey ${i}`,
      order: i,
    }));
    const runs = ['L3', 'L160'].map((level) => ({ ...job.runs[0]!, id: `${level}-A`, level }));
    const document = { ...job, project: { ...job.project, number: 'TALL' }, levels, runs };
    const made = await play.as('ada').post('/api/v1/job-documents').send(document);
    expect(made.status, JSON.stringify(made.body)).toBe(201);
    const answer = await play.as('ada').get(`/jobs/${made.body.id}/bid-build-up.pdf`).buffer(true);
    expect(answer.status).toBe(200);
    const said = await lettering(answer.body);
    const sums = [...said.matchAll(/All (?:activities|levels) ([\d.,]+ h)/g)].map(([, sum]) => sum);
    expect(sums).toHaveLength(2);
    expect(sums[0]).toBe(sums[1]);
    expect(said).toMatch(/Level Job Storey 3 [\d.]+ h Storey 160 [\d.]+ h All levels/);
  });

  it('the build-up prints every line with its working, and the printed lines sum to the printed price', async () => {
    const figures = await bid();
    const said = await read('bid-build-up');
    for (const line of figures.lines) expect(said).toContain(money(line.amount));
    expect(said).toContain('7 % of $1,263,100.00');
    expect(said).toContain(money(figures.price));
    expect(figures.lines.reduce((sum: number, line: { amount: number }) => sum + line.amount, 0)).toBe(figures.price);
    expect(said).toContain('Labour hours');
  });

  it('the summary prints the lines, markup and margin apart, and room to sign', async () => {
    const figures = await bid();
    const said = await read('bid-summary');
    for (const line of figures.lines) expect(said).toContain(money(line.amount));
    expect(said).toContain('Profit as markup on cost');
    expect(said).toMatch(/5\.66 %/);
    expect(said).toContain('Checked by, date');
    expect(said).toContain('AACE International 56R-08');
  });

  it('the client’s version prints price, alternates, unit prices and terms, and no line of cost', async () => {
    const figures = await bid();
    const said = await read('bid-client');
    for (const words of [
      money(figures.price),
      'Feeder conduit and wire',
      'No. 2',
      'Stock on site early',
      '$612.50',
      '2026-06-12',
    ])
      expect(said).toContain(words);
    for (const line of figures.lines) expect(said).not.toContain(money(line.amount));
    // The book that the hours come from is invented, and every print says so: beside that one sentence nothing of hours.
    expect(said).toMatch(/Labour book \S.*? is invented/);
    const others = said.replace(/Labour book \S.*? is invented:.*?of your own\./, '');
    for (const word of ['Overhead', 'Profit', 'margin', 'Cost', 'Labour', 'hours']) expect(others).not.toContain(word);
    expect(said).toContain('nothing in this bid permits anybody to energise anything');
  });

  it('they are the office’s alone; the takeoff is everybody’s and holds no money', async () => {
    for (const person of ['frank', 'quinn', 'owen', 'rita'] as const)
      for (const name of BID_PAPERS) expect((await bytes(name, person)).status, `${person} ${name}`).toBe(403);
    expect((await bytes('takeoff', 'frank')).status).toBe(200);
    const said = await read('takeoff');
    expect(said).toContain('Order list');
    expect(said).not.toContain('$');
  });

  it('equal figures at one moment give equal bytes', async () => {
    const [first, second] = [await bytes('bid-build-up'), await bytes('bid-build-up')];
    expect(first.body.equals(second.body)).toBe(true);
  });
});

forEachDatabase((open) => {
  it('a price that is not complete says so on every paper, and the client’s is a draft not to be signed', async () => {
    const play = await stage(await open());
    const job = scenarioT2();
    const { materials: _quoted, ...rest } = job.bid ?? {};
    const buswayTypes = job.buswayTypes.map(({ prices: _none, ...type }) => type);
    const { body } = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send({
        ...job,
        runs: job.runs.slice(0, 2),
        buswayTypes,
        bid: rest,
        labourBook: { ...job.labourBook, version: 'demo-1, invented' },
      });
    await play.joinAll(body.id);
    for (const name of BID_PAPERS) {
      const answer = await play.as('olive').get(`/jobs/${body.id}/${name}.pdf`).buffer(true);
      const pdf = await getDocument({ data: new Uint8Array(answer.body), verbosity: 0 }).promise;
      const { items } = await (await pdf.getPage(1)).getTextContent();
      const said = items.map((item) => ('str' in item ? item.str : '')).join(' ');
      expect(said, name).toContain('not complete');
      expect(said.replace(/\s+/g, ' '), name).toContain('Labour book demo-1, invented is invented');
      if (name === 'bid-client') expect(said).toContain('do not sign');
    }
    await play.app.close();
  });
});

async function lettering(bytes: Uint8Array): Promise<string> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const sheets: string[] = [];
  for (let page = 1; page <= pdf.numPages; page++) {
    const { items } = await (await pdf.getPage(page)).getTextContent();
    sheets.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return sheets.join(' ').replace(/\s+/g, ' ');
}
