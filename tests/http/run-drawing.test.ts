import { readFileSync } from 'node:fs';
import { brotliCompressSync, constants } from 'node:zlib';
import { beforeAll, expect, it } from 'vitest';
import { campusJob } from '../../src/document/demo/campus.ts';
import { runsBeside } from '../../src/store/runs-beside.ts';
import { forEachDatabase } from '../support/databases.ts';
import { BRANCH, DRAFT, type Floor, RUN, releasedFloor, TEE } from '../support/floor.ts';
import { fieldsOf, readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  type Person = Parameters<Floor['play']['as']>[0];
  type Change = Readonly<Record<string, string>>;
  const at = async (key: string | null) =>
    `/jobs/${floor.projectId}/runs/${key === null ? 'new' : await floor.runId(key)}`;
  const formOf = async (key: string) => fieldsOf((await floor.play.as('olive').get(`${await at(key)}/edit`)).text);
  const send = async (person: Person, key: string | null, fields: Change) =>
    floor.play
      .as(person)
      .post(`${await at(key)}/drawing`)
      .type('form')
      .send(fields);
  /** As htmx asks: the parts of the page that change. */
  const draw = async (key: string | null, change: Change = {}, person: Person = 'olive') => {
    const fields = key === null ? {} : await formOf(key);
    return floor.play
      .as(person)
      .post(`${await at(key)}/drawing`)
      .set('HX-Request', 'true')
      .type('form')
      .send({ ...fields, ...change });
  };
  const NEW = { level: 'F1', type: 'demo-250A-3PN', conductorSide: 'left', 'feed.kind': 'end' };

  it('a run is drawn as it is typed, with its figures and findings, and nothing is saved', async () => {
    const id = await floor.runId(DRAFT);
    const before = (await floor.play.as('olive').get(`${floor.job}/runs/${id}`)).body;
    const answer = await draw(DRAFT, { 'legs[0].lengthMm': '61.5', taps: '' });
    expect(answer.status).toBe(200);
    expect(targets(answer.text)).toEqual(['#typed-words', '#drawn']);
    const said = readPage(answer.text);
    expect(said).toContain('As typed; nothing is saved yet.');
    expect(said).toContain(`Length of leg 1 = 61'-6"`);
    expect(said).toMatch(/Stop .*cannot be covered/);
    const good = await draw(DRAFT, { 'legs[0].lengthMm': '60 ft', taps: '' });
    expect(readPage(good.text)).toMatch(
      /60'-0" long 3 pieces 3 joints \d hangers 0 tap-offs \$[\d,.]+ pieces and joints/,
    );
    expect(good.text).toContain('class="strip"');
    expect(good.text).toContain('class="plan"');
    expect((await floor.play.as('olive').get(`${floor.job}/runs/${id}`)).body).toEqual(before);
  });

  it('an entry that cannot be read leaves the last drawing alone and is named with its remedy', async () => {
    const answer = await draw(DRAFT, { 'legs[0].lengthMm': '10 6' });
    expect(answer.status).toBe(200);
    expect(targets(answer.text)).toEqual(['#typed-words']);
    expect(answer.text).toContain('data-field="f-legs-0--lengthMm"');
    expect(readPage(answer.text)).toContain(
      `Not drawn anew: one entry is to put right. Nothing typed is lost. Length of leg 1 : "10 6" has no marks for its units. Did you mean 10'-6"?`,
    );
  });

  it('decimal feet are shown back as they were read while they are typed', async () => {
    const said = readPage((await draw(DRAFT, { dropMm: '10.6' })).text);
    expect(said).toContain(`Rod for each hanger 10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`);
  });

  it('a fault of the whole design stands beside its field, in the words of the form', async () => {
    const crossing = { 'crossings[0].thicknessMm': '8"', 'crossings[0].kind': 'wall' };
    const missing = await draw(DRAFT, { ...crossing, 'crossings[0].atMm': '' });
    expect(missing.text).toContain('data-field="f-crossings-0--atMm"');
    expect(readPage(missing.text)).toContain('Nothing is entered here. Give the distance of the wall');
    expect(missing.text).not.toContain('atMm is missing');
    const pair = await draw(DRAFT, { pairedRun: 'F1-R01-X' });
    expect(pair.text).toContain('data-field="f-pairedRun"');
    const taken = await draw(DRAFT, { id: TEE });
    expect(readPage(taken.text)).toContain(`The job has a run ${TEE} already. Give this one another label`);
  });

  it('a new run is drawn before it has a label, and asks for the first leg until it has one', async () => {
    const blank = await floor.play.as('olive').get(`${await at(null)}`);
    expect(readPage(blank.text)).toContain('Nothing is drawn yet: the first leg has no length.');
    expect(targets((await draw(null, NEW)).text)).toEqual(['#typed-words']);
    const drawn = await draw(null, { ...NEW, 'legs[0].lengthMm': '70 ft' });
    expect(readPage(drawn.text)).toContain(`70'-0" long 4 pieces`);
  });

  it('a branch is drawn where its tee stands, with the run that it leaves', async () => {
    const said = (await draw(BRANCH)).text;
    expect(said).toContain(`<title>Run ${TEE}</title>`);
    expect(said).toContain(`<title>Run ${BRANCH}</title>`);
  });

  it('a run that carries a tee tells what a shorter leg does to the branch on it', async () => {
    const answer = await draw(TEE, { 'legs[0].lengthMm': '20 ft', 'end.reachMm': '', 'end.hardStopMm': '', taps: '' });
    expect(targets(answer.text)).toEqual(['#typed-words']);
    expect(readPage(answer.text)).toContain(`Run ${BRANCH}, which hangs on this one:`);
    const renamed = await draw(TEE, { id: 'F1-R66-A' });
    expect(targets(renamed.text)).toEqual(['#typed-words', '#drawn']);
  });

  it('only who may design can ask, and nobody else is told a cost', async () => {
    for (const person of ['frank', 'ines', 'quinn', 'owen', 'rita'] as const) {
      const refused = await draw(DRAFT, {}, person);
      expect(refused.status).toBe(403);
      expect(refused.text).not.toContain('pieces and joints');
    }
  });

  it('a typist is never told to slow down', async () => {
    const fields = await formOf(DRAFT);
    const path = `${await at(DRAFT)}/drawing`;
    for (let i = 0; i < 80; i++) {
      const answer = await floor.play.as('olive').post(path).set('HX-Request', 'true').type('form').send(fields);
      expect(answer.status).toBe(200);
    }
  });

  it('rows pasted into a cell come back in their places; a row too many words is told and no entry changes', async () => {
    const pasted = { 'paste.legs': '40 ft\tleft\n35 ft', 'paste.legs.at': 'legs[0].lengthMm', taps: '' };
    const good = await draw(DRAFT, { ...pasted, 'end.reachMm': '', 'end.hardStopMm': '' });
    expect(targets(good.text)).toEqual(['#typed-words', '#drawn', '#legs-rows']);
    expect(fieldsOf(good.text)).toMatchObject({
      'legs[0].lengthMm': '40 ft',
      'legs[0].turn': 'left',
      'legs[1].lengthMm': '35 ft',
      'paste.legs': '',
      'paste.legs.at': '',
    });
    const bad = await draw(DRAFT, { ...pasted, 'paste.legs': '40 ft\tleft\n35 ft\tdownn' });
    expect(targets(bad.text)).toEqual(['#typed-words', '#legs-rows']);
    expect(readPage(bad.text)).toContain(
      'Legs, row 2, turn : "downn" is not none, left, right, up or down. Did you mean down?',
    );
    expect(fieldsOf(bad.text)['paste.legs']).toBe('40 ft\tleft\n35 ft\tdownn');
    expect(fieldsOf(bad.text)['legs[0].lengthMm']).toBe((await formOf(DRAFT))['legs[0].lengthMm']);
  });

  it('without script the form comes back with its drawing, and what is wrong beside its field', async () => {
    const fields = await formOf(DRAFT);
    const paste = { 'paste.crossings': `centre at\tthickness\tkind\n30 ft\t8"\tfire wall` };
    const shown = await send('olive', DRAFT, { ...fields, ...paste, area: 'Hall 3' });
    expect(shown.status).toBe(200);
    expect(shown.text).toContain('class="strip"');
    expect(readPage(shown.text)).toContain('As typed; nothing is saved yet. Crossings: 1 pasted.');
    expect(fieldsOf(shown.text)).toMatchObject({
      area: 'Hall 3',
      version: fields.version,
      'crossings[0].atMm': '30 ft',
      'crossings[0].kind': 'fire-wall',
      'paste.crossings': '',
    });
    const wrong = await send('olive', DRAFT, { ...fields, dropMm: 'long', 'paste.legs': 'a\tb\tc\td' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('id="f-dropMm-fault"');
    expect(fieldsOf(wrong.text)).toMatchObject({ dropMm: 'long', 'paste.legs': 'a\tb\tc\td' });
  });

  it('the address of a drawing, asked for again, is the form', async () => {
    const olive = floor.play.as('olive');
    expect((await olive.get(`${await at(DRAFT)}/drawing`)).headers.location).toBe(`${await at(DRAFT)}/edit`);
    expect((await olive.get(`${await at(null)}/drawing`)).headers.location).toBe(await at(null));
  });

  it('pasted rows are saved with the run, and a wrong block saves nothing', async () => {
    const fields = { ...NEW, id: 'F1-R88-A', submissionId: 'pasted-run' };
    const olive = floor.play.as('olive');
    const wrong = await olive
      .post(await at(null))
      .type('form')
      .send({ ...fields, 'paste.legs': '70 ft\taround' });
    expect(wrong.status).toBe(422);
    expect(readPage(wrong.text)).toContain('Legs : one cell is listed above the rows.');
    const made = await floor.play
      .as('olive')
      .post(await at(null))
      .type('form')
      .send({ ...fields, 'paste.legs': `70 ft` });
    expect(made.status).toBe(303);
    const { document } = (await floor.play.as('olive').get(`${floor.job}/runs/${await floor.runId('F1-R88-A')}`)).body;
    expect(document.legs).toEqual([{ lengthMm: 21336, turn: 'none' }]); // 70 ft of 304.8 mm
  });

  it('drawing one run reads the few that it depends on, however many the job has', async () => {
    const database = await open();
    const big = await releasedFloor(database).then(async (other) => {
      const made = await other.play
        .as('ada')
        .post('/api/v1/job-documents')
        .send(campusJob({ runs: 400, seed: 3 }));
      return { id: made.body.id as string, close: other.close };
    });
    const rows = await database.db.run.findMany({
      where: { projectId: big.id },
      select: { id: true, key: true, spec: true },
    });
    for (const row of rows.slice(0, 60)) {
      const typed = { rowId: row.id, key: row.key, document: row.spec as never };
      const { runs, isTaken } = await runsBeside(database.db, big.id, typed);
      expect(isTaken).toBe(false);
      expect(runs.length).toBeLessThanOrEqual(3); // its pair, its parent, its branch
    }
    await big.close();
  });

  it('the form with its drawing and everything it needs is under 60 kB compressed', async () => {
    const page = (await floor.play.as('olive').get(`${await at(RUN)}/edit`)).text;
    const dist = 'node_modules/htmx.org/dist';
    const files = [
      'views/assets/app.css',
      'views/assets/run-form.js',
      `${dist}/htmx.min.js`,
      `${dist}/ext/hx-sse.min.js`,
    ];
    const parts = [Buffer.from(page), ...files.map((file) => readFileSync(file))];
    const sizes = parts.map(
      (part) => brotliCompressSync(part, { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } }).length,
    );
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(60_000);
  });

  it('the form of a released run draws the design, not what the floor has', async () => {
    const page = await floor.play.as('olive').get(`${await at(RUN)}/edit`);
    expect(readPage(page.text)).toContain('As saved.');
    expect(page.text).toContain(`id="typed-${RUN}-title"`);
  });
});

/** What the answer puts where. */
function targets(html: string): string[] {
  return [...html.matchAll(/<hx-partial hx-target="([^"]+)"/g)].map(([, target = '']) => target);
}
