import { createHash } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import { pdfLettering } from '../paper/support/pdf-strokes.ts';
import type { Person } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { type Floor, RUN, releasedFloor } from '../support/floor.ts';
import { fieldsOf, readPage } from '../support/page.ts';
import { crossPdf, crossPng, inkOf, nonsensePng, statedPng } from '../support/pictures.ts';

const SVG = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';

forEachDatabase((open) => {
  let floor: Floor;
  let levels: { id: string; document: { id: string } }[];
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    levels = (await floor.play.as('rita').get(`/api/v1/projects/${floor.projectId}/levels`)).body.items;
    return () => floor.close();
  });
  const levelOf = (key: string) => levels.find((level) => level.document.id === key)?.id ?? '';
  const api = (key: string) => `/api/v1/projects/${floor.projectId}/levels/${levelOf(key)}/background`;
  const page = (key: string) => `/jobs/${floor.projectId}/floors/${levelOf(key)}/background`;
  const plan = (key: string) => `/jobs/${floor.projectId}/floors/${levelOf(key)}/plan`;
  const as = (person: Person) => floor.play.as(person);
  const put = (key: string, body: Buffer, { type = 'image/png', query = '', version = '' } = {}) => {
    const asked = as('olive')
      .put(`${api(key)}/picture${query}`)
      .set('content-type', type);
    return (version === '' ? asked : asked.set('if-match', version)).send(body);
  };
  /** 100 pixels are 1 m, north up; the top left corner 1 m west and 9 m north of the origin. */
  const POINTS = [
    { pixelX: 100, pixelY: 900, xMm: 0, yMm: 0 },
    { pixelX: 1100, pixelY: 900, xMm: 10_000, yMm: 0 },
  ];

  it('a picture is sent, set in place by two points, shown under the plan, and taken away', async () => {
    expect((await as('rita').get(api('F1'))).status).toBe(404);
    const set = await put('F1', await crossPng(1200, 1000), { query: '?name=C%3A%5Cplans%5CFloor%201.png' });
    expect(set.status).toBe(200);
    expect(set.body).toMatchObject({
      name: 'Floor 1.png',
      kind: 'png',
      widthPx: 1200,
      heightPx: 1000,
      calibration: null,
    });
    expect(set.headers.etag).toBe(`"${set.body.version}"`);
    expect((await as('frank').get(plan('F1'))).text).not.toContain('<image');

    const placed = await as('olive')
      .put(`${api('F1')}/calibration`)
      .set('if-match', set.headers.etag ?? '')
      .send({ points: POINTS });
    expect(placed.status).toBe(200);
    expect(placed.body.calibration).toMatchObject({ mmPerPixel: 10, turnedDeg: 0, sheetScale: null, notes: [] });

    const shown = (await as('frank').get(plan('F1'))).text;
    const image = /<image href="([^"]+)"[^>]*>/.exec(shown)?.[0] ?? '';
    expect(image).toContain(`/background/${set.body.sha256}.png"`);
    expect(image).toContain('opacity="0.4"');
    expect(readPage(shown)).toContain('for orientation, not for dimensions');
    expect((await as('frank').get(`${plan('F1')}?picture=full`)).text).not.toContain('opacity="0.4"');
    expect((await as('frank').get(`${plan('F1')}?picture=none`)).text).not.toContain('<image');
    expect(readPage((await as('frank').get(`${plan('F1')}?show=picture`)).text)).toContain('Whole picture');

    const gone = await as('olive')
      .delete(api('F1'))
      .set('if-match', placed.headers.etag ?? '');
    expect(gone.status).toBe(204);
    expect((await as('frank').get(plan('F1'))).text).not.toContain('<image');
    const { items } = (await as('olive').get(`/api/v1/projects/${floor.projectId}/audit?limit=3`)).body;
    expect(items.map((entry: { action: string }) => entry.action).sort()).toEqual([
      'background calibrated',
      'background removed',
      'background set',
    ]);
  });

  it('the plan draws it where the points say: the pixel of A under the place of A', async () => {
    await put('F2', await crossPng(1200, 1000));
    const turned = [
      { pixelX: 200, pixelY: 200, xMm: 3000, yMm: 3000 },
      { pixelX: 700, pixelY: 200, xMm: 6000, yMm: 7000 }, // 5 m along the slant of the 3-4-5 triangle
    ];
    const version = (await as('olive').get(api('F2'))).headers.etag ?? '';
    await as('olive')
      .put(`${api('F2')}/calibration`)
      .set('if-match', version)
      .send({ points: turned });
    const svg = (await as('frank').get(plan('F2'))).text;
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] =
      /<image[^>]*transform="matrix\(([^)]+)\)"/.exec(svg)?.[1]?.split(' ').map(Number) ?? [];
    const drawn = (x: number, y: number) => ({ x: a * x + c * y + e, y: b * x + d * y + f });
    const [one, other] = [drawn(200, 200), drawn(700, 200)];
    // On the sheet north is up: 3 to the right and 4 up.
    expect((other.y - one.y) / (other.x - one.x)).toBeCloseTo(-4 / 3, 5);
    expect(a * d - b * c).toBeGreaterThan(0); // never mirrored
    // The scale bar tells drawing units to the foot: 5 m between the points in those.
    const [, width = '0', feet = '1'] =
      /<rect x="26" y="[\d.]+" width="([\d.]+)" height="6" fill="none".*?>(\d+) ft<\/text>/s.exec(svg) ?? [];
    const perMetre = Number(width) / (Number(feet) * 0.3048);
    expect(Math.hypot(other.x - one.x, other.y - one.y) / perMetre).toBeCloseTo(5, 1);
  });

  it('the picture goes to members alone, as PNG that is kept by its hash', async () => {
    const { body } = await put('F3', await crossPng(400, 300));
    const picture = await as('rita')
      .get(`${page('F3')}/${body.sha256}.png`)
      .buffer(true);
    expect(picture.status).toBe(200);
    expect(picture.headers['content-type']).toBe('image/png');
    expect(picture.headers['x-content-type-options']).toBe('nosniff');
    expect(picture.headers['cache-control']).toBe('private, max-age=604800, immutable');
    expect(createHash('sha256').update(picture.body).digest('hex')).toBe(body.sha256);
    const byApi = await as('rita')
      .get(`${api('F3')}/picture`)
      .buffer(true);
    expect(byApi.headers['cache-control']).toBe('private, no-cache');
    expect(Buffer.compare(byApi.body, picture.body)).toBe(0);
    expect((await as('rita').get(`${page('F3')}/${'0'.repeat(64)}.png`)).status).toBe(404);
    expect((await as('stan').get(`${page('F3')}/${body.sha256}.png`)).status).toBe(404);
    expect((await as('stan').get(`${api('F3')}/picture`)).status).toBe(404);
  });

  it('only who designs may set it; a reader sees it without forms', async () => {
    const { status, body } = await as('frank')
      .put(`${api('F3')}/picture`)
      .set('content-type', 'image/png')
      .send(await crossPng(400, 300));
    expect([status, body.type]).toEqual([403, '/problems/forbidden']);
    expect((await as('frank').delete(api('F3')).set('if-match', '"1"')).status).toBe(403);
    expect(
      (
        await as('frank')
          .post(`${page('F3')}/removal`)
          .type('form')
          .send({ version: '1' })
      ).status,
    ).toBe(403);
    const read = await as('frank').get(page('F3'));
    expect(read.status).toBe(200);
    expect(read.text).not.toContain('type="file"');
    expect(read.text).toContain('<image');
  });

  it('a picture is not replaced unseen, and its calibration goes with it', async () => {
    const { headers } = await as('olive').get(api('F3'));
    expect((await put('F3', await crossPng(500, 300))).status).toBe(428);
    expect((await put('F3', await crossPng(500, 300), { version: '"1"' })).status).toBe(412);
    const placed = await as('olive')
      .put(`${api('F3')}/calibration`)
      .set('if-match', headers.etag ?? '')
      .send({
        points: [
          { pixelX: 0, pixelY: 0, xMm: 0, yMm: 0 },
          { pixelX: 400, pixelY: 0 },
        ],
        distanceMm: 8000,
        headingDeg: 90,
      });
    expect(placed.body.calibration).toMatchObject({ mmPerPixel: 20, turnedDeg: 90 });
    const replaced = await put('F3', await crossPng(500, 300), { version: placed.headers.etag ?? '' });
    expect(replaced.body).toMatchObject({ widthPx: 500, calibration: null });
  });

  it('of a PDF of several pages one is chosen, until it is set in place', async () => {
    const file = await crossPdf([[{ x: 72, y: 72 }], [{ x: 144, y: 144 }]], { size: [720, 360] });
    const version = (await as('olive').get(api('F3'))).headers.etag ?? '';
    const set = await put('F3', file, { type: 'application/pdf', version });
    expect(set.body).toMatchObject({
      kind: 'pdf',
      page: 1,
      pages: 2,
      otherPages: true,
      widthPx: 1500,
      dotsPerInch: 150,
    });
    expect(readPage((await as('olive').get(page('F3'))).text)).toContain('Page, 1 to 2');
    const missing = await as('olive')
      .put(`${api('F3')}/page`)
      .set('if-match', set.headers.etag ?? '')
      .send({ page: 3 });
    expect([missing.status, missing.body.errors[0].message]).toEqual([
      422,
      'The PDF has 2 pages, so there is no page 3.',
    ]);
    const second = await as('olive')
      .post(`${page('F3')}/page`)
      .type('form')
      .send({ version: String(set.body.version), page: '2' });
    expect(second.status).toBe(303);
    const picture = await as('rita')
      .get(`${api('F3')}/picture`)
      .buffer(true);
    expect((await inkOf(picture.body)).at(300, 300)).toBeGreaterThan(100); // 2 in at 150 dots
    const now = (await as('rita').get(api('F3'))).headers.etag ?? '';
    const points = [
      { pixelX: 0, pixelY: 0, xMm: 0, yMm: 0 },
      { pixelX: 1500, pixelY: 0 },
    ];
    const placed = await as('olive')
      .put(`${api('F3')}/calibration`)
      .set('if-match', now)
      .send({ points, distanceMm: 25_400 });
    expect(placed.body).toMatchObject({ otherPages: false, calibration: { turnedDeg: 0 } });
    expect(placed.body.calibration.sheetScale).toBeCloseTo(100, 6); // 10 in of paper are 25.4 m
    const late = await as('olive')
      .put(`${api('F3')}/page`)
      .set('if-match', placed.headers.etag ?? '')
      .send({ page: 1 });
    expect([late.status, late.body.title]).toEqual([409, 'The other pages are no longer kept']);
    const { source } = await floor.play.context.database.db.levelBackground.findUniqueOrThrow({
      where: { levelId: levelOf('F3') },
      select: { source: true },
    });
    expect(source).toBeNull();
  });

  it('what is no picture is refused with what to do, and nothing of it is kept', async () => {
    const before = (await as('rita').get(api('F3'))).body;
    const version = `"${before.version}"`;
    const bad: [string, Buffer, string][] = [
      ['plan.png', Buffer.alloc(0), '0 bytes'],
      ['plan.png', Buffer.from(SVG), 'an SVG drawing'],
      ['plan.pdf', Buffer.from('<!doctype html><p>hello</p>'), 'a text in HTML'],
      ['plan.png', statedPng(60_000, 60_000), '60000 × 60000 pixels'],
      ['plan.png', nonsensePng(400, 400), 'one colour'],
      ['plan.pdf', Buffer.from('%PDF-1.7 rubbish'), 'PDF cannot be read'],
      ['plan.pdf', await crossPdf([[{ x: 9, y: 9 }]], { password: 'x' }), 'asks for a password'],
      ['plan.png', Buffer.alloc(21 * 1024 * 1024, 1), 'larger than 20 MB'],
      ['plan.png', Buffer.alloc(27 * 1024 * 1024, 1), 'larger than 20 MB'],
    ];
    for (const [name, bytes, message] of bad) {
      const byForm = await as('olive')
        .post(page('F3'))
        .field('version', String(before.version))
        .attach('file', bytes, name);
      expect(byForm.status, message).toBe(422);
      expect(readPage(byForm.text)).toContain(message);
      const byApi = await put('F3', bytes, { type: 'application/octet-stream', version });
      expect(byApi.status, message).toBe(422);
      expect(byApi.headers['content-type']).toContain('application/problem+json');
      expect(byApi.body.errors[0].message).toContain(message);
      expect(byApi.body.errors[0].remedy).not.toBe('');
    }
    expect((await put('F3', Buffer.from('x'), { type: 'text/html', version })).status).toBe(415);
    expect((await as('rita').get(api('F3'))).body).toEqual(before);
  }, 60_000);

  it('by the form alone: sent, refused beside the field with what was typed, set in place', async () => {
    const empty = await as('olive').get(page('F4'));
    expect(readPage(empty.text)).toContain('No picture lies under this plan');
    const { submissionId = '' } = fieldsOf(empty.text);
    const file = await crossPng(1200, 1000);
    const send = () =>
      as('olive').post(page('F4')).field('submissionId', submissionId).attach('file', file, 'Floor <4>.png');
    const sent = await send();
    expect(sent.status).toBe(303);
    const { version: sentOnce } = (await as('rita').get(api('F4'))).body;
    expect((await send()).status).toBe(303); // a double tap
    expect((await as('rita').get(api('F4'))).body.version).toBe(sentOnce);
    const form = await as('olive').get(page('F4'));
    expect(form.text).toContain('Floor &lt;4>.png');
    const { version = '' } = fieldsOf(form.text);
    const first = { 'points[0].pixelX': '100', 'points[0].pixelY': '900', 'points[0].xMm': '0', 'points[0].yMm': '0' };
    const calibrate = (fields: Record<string, string>) =>
      as('olive')
        .post(`${page('F4')}/calibration`)
        .type('form')
        .send({ version, ...first, ...fields });
    const wrong = await calibrate({
      known: 'distance',
      'points[1].pixelX': '2000',
      'points[1].pixelY': '',
      distanceMm: 'ten',
    });
    expect(wrong.status).toBe(422);
    expect(readPage(wrong.text)).toContain('2 entries need your attention');
    expect(readPage(wrong.text)).toContain('Point B is not set');
    expect(fieldsOf(wrong.text)['points[1].pixelX']).toBe('2000');
    const outside = await calibrate({
      known: 'distance',
      'points[1].pixelX': '2000',
      'points[1].pixelY': '900',
      distanceMm: '30 ft',
    });
    expect(readPage(outside.text)).toContain(
      'Point B is at pixel 2000, and the picture is 1200 pixels wide. Give 0 to 1200.',
    );
    const placed = await calibrate({
      known: 'distance',
      headingDeg: 'picture',
      'points[1].pixelX': '1100',
      'points[1].pixelY': '900',
      distanceMm: '30.48 m',
    });
    expect(placed.status).toBe(303);
    const done = readPage((await as('olive').get(page('F4'))).text);
    expect(done).toContain('1 pixel is 30.5 mm');
    expect(done).toContain('not: its top is north');
  });

  it('a print has it when it is asked for, once in the file, and says what it is not for', async () => {
    const file = async (path: string) => (await as('frank').get(path).buffer(true)).body as Buffer;
    const without = await file(`${plan('F2')}.pdf`);
    expect(without.includes('/Subtype /Image')).toBe(false);
    const withIt = await file(`${plan('F2')}.pdf?picture=light&scale=48`);
    const text = withIt.toString('latin1');
    expect(text.match(/\/Subtype \/Image/g)).toHaveLength(1);
    expect(text).toContain('/DCTDecode');
    const said = pdfLettering(withIt).join('\n');
    expect(said).toContain('Picture under the plan: for orientation, not for dimensions');
    const svg = (await file(`${plan('F2')}.svg?picture=light&scale=48`)).toString('utf8');
    expect(svg.match(/data:image\/jpeg;base64,/g)).toHaveLength(1);
    expect(svg.match(/<use href="#picture-under-plan"/g)?.length).toBeGreaterThan(1);
    expect(svg, 'an attribute without a value is no XML').not.toMatch(/<\w+( [\w:-]+="[^"]*")* [\w:-]+[ >/]/);
    expect((await file(`${plan('F2')}.svg`)).toString('utf8')).not.toContain('data:image');
  });

  it('the job document does not carry it, and a change of the level leaves it alone', async () => {
    const document = await as('olive').get(`/api/v1/projects/${floor.projectId}/document`);
    expect(JSON.stringify(document.body)).not.toMatch(/background|sha256/i);
    const level = await as('olive').get(`/api/v1/projects/${floor.projectId}/levels/${levelOf('F2')}`);
    const renamed = await as('olive')
      .put(`/api/v1/projects/${floor.projectId}/levels/${levelOf('F2')}`)
      .set('if-match', level.headers.etag ?? '')
      .send({ ...level.body.document, name: 'Second floor' });
    expect(renamed.status).toBe(200);
    expect((await as('rita').get(api('F2'))).body).toMatchObject({ widthPx: 1200 });
    expect((await as('rita').get(plan('F2'))).text).toContain(RUN.replace('F1', 'F2'));
  });

  it('the API describes it: bytes of three kinds go in, problems come out', async () => {
    const { paths } = (await as('rita').get('/api/v1/openapi.json')).body;
    const base = '/api/v1/projects/{projectId}/levels/{id}/background';
    expect(Object.keys(paths[base])).toEqual(expect.arrayContaining(['get', 'delete']));
    expect(Object.keys(paths[`${base}/calibration`])).toEqual(['put']);
    const { requestBody, responses } = paths[`${base}/picture`].put;
    expect(Object.keys(requestBody.content)).toEqual(
      expect.arrayContaining(['image/png', 'image/jpeg', 'application/pdf']),
    );
    expect(requestBody.content['application/pdf'].schema).toMatchObject({ type: 'string', format: 'binary' });
    expect(Object.keys(responses)).toContain('4XX');
  });

  it('goes with its level', async () => {
    const levelsPath = `/api/v1/projects/${floor.projectId}/levels`;
    const attic = { id: 'F9', name: 'Attic', order: 9 };
    const made = await as('olive').post(levelsPath).send(attic);
    const path = `${levelsPath}/${made.body.id}`;
    const set = await as('olive')
      .put(`${path}/background/picture`)
      .set('content-type', 'image/png')
      .send(await crossPng(400, 300));
    expect(set.status).toBe(200);
    expect(
      (
        await as('olive')
          .delete(path)
          .set('if-match', made.headers.etag ?? '')
      ).status,
    ).toBe(204);
    const left = await floor.play.context.database.db.levelBackground.count({ where: { levelId: made.body.id } });
    expect(left).toBe(0);
  });
});
