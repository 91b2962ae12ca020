import { beforeAll, expect, it } from 'vitest';
import { verifyCloseout } from '../../src/paper/verify-closeout.ts';
import { keptBytes, unpacked } from '../paper/support/unpacked.ts';
import { forEachDatabase } from '../support/databases.ts';
import { CORNER, type Floor, hung, RUN, releasedFloor, SET, testBody } from '../support/floor.ts';
import { readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  const download = (person: Parameters<Floor['play']['as']>[0]) =>
    floor.play
      .as(person)
      .get(`${floor.job}/closeout`)
      .buffer(true)
      .parse((stream, done) => {
        const chunks: Buffer[] = [];
        stream.on('data', (chunk: Buffer) => chunks.push(chunk));
        stream.on('end', () => done(null, Buffer.concat(chunks)));
      });
  const readiness = async (query = '') =>
    (await floor.play.as('quinn').get(`${floor.job}/closeout/readiness${query}`)).body;

  it('office, foreman, inspector and owner may take the package; installers and readers may not, and strangers find no job', async () => {
    const statuses = async (path: string) => {
      const people = ['olive', 'frank', 'quinn', 'owen', 'ines', 'rita', 'stan'] as const;
      return Promise.all(people.map(async (person) => (await floor.play.as(person).get(path)).status));
    };
    expect(await statuses(`${floor.job}/closeout/readiness`)).toEqual([200, 200, 200, 200, 403, 403, 404]);
    expect((await download('rita')).status).toBe(403);
    expect((await download('stan')).status).toBe(404);
  });

  it('readiness counts what the floor has recorded, and names what it has not', async () => {
    const pieces = await floor.things('sections', RUN);
    const [hanger] = await floor.things('supports', RUN);
    const before = await readiness();
    await floor.take('ines', 'support', hanger?.id ?? '', { ...SET, measuredMm: 600 });
    await floor.take('ines', 'run', await floor.runId(RUN), { kind: 'slot-closed' });
    const after = await readiness();
    expect(after.present - before.present).toBe(2);
    expect(after.required).toBe(before.required);
    const rows = Object.fromEntries(
      after.rows.map((row: { row: string; present: number; required: number }) => [row.row, row]),
    );
    expect(rows.supports).toMatchObject({ title: 'Hangers set', present: 1 });
    expect(rows.instruments).toMatchObject({ required: 0, present: 0, percent: null });
    const { gaps } = await readiness('?row=pieces&limit=500');
    expect(gaps.items.map((gap: { mark: string }) => gap.mark)).toEqual(
      expect.arrayContaining(pieces.map((piece) => piece.mark)),
    );
    expect(gaps.items[0]).toMatchObject({ reason: 'not-hung', words: 'not hung', subject: 'piece' });
    expect(gaps.total).toBe(rows.pieces.required);
  });

  it('a test that passed stops counting when work follows on what the run is connected to', async () => {
    const run = await floor.runId(CORNER);
    const insulation = async () => {
      const { gaps } = await readiness('?row=insulation&limit=500');
      return gaps.items.find((gap: { run: string }) => gap.run === CORNER)?.reason ?? 'none';
    };
    expect(await insulation()).toBe('test-missing');
    await floor.take('quinn', 'run', run, testBody());
    expect(await insulation()).toBe('none');
    floor.play.setClock('2026-05-12T14:00:00.000Z');
    const [piece] = await floor.things('sections', CORNER);
    await floor.take('ines', 'piece', piece?.id ?? '', hung('left'));
    expect(await insulation()).toBe('test-stale');
  });

  it('the package is a ZIP that verifies, prints what was recorded, and is the same again however often it is made', async () => {
    const first = await download('owen');
    expect(first.headers['content-type']).toBe('application/zip');
    expect(first.headers['content-disposition']).toMatch(
      /^attachment; filename="closeout-DEMO-1-2026-05-12-[0-9a-f]{8}\.zip"$/,
    );
    const zip = keptBytes(first.body);
    expect(await verifyCloseout(zip)).toMatchObject({ ok: true, faults: [] });
    const files = await unpacked(zip);
    const hangers = files.get('registers/hangers.csv')?.toString() ?? '';
    expect(hangers).toMatch(/F1-R01-A,F1-R01-A-H01,609\.6,"2'-0""",600,[^\r]*,set,Ines Holt,2026-05-12T13:00:00\.000Z/);
    const again = await download('olive');
    expect(Buffer.from(again.body).equals(Buffer.from(first.body))).toBe(true);
  });

  it('that it was made is entered for the site, and not in the job’s own trail', async () => {
    const { db } = floor.play.context.database;
    const made = await db.auditEntry.findMany({
      where: { chain: 'site', action: 'closeout made' },
      orderBy: { seq: 'asc' },
    });
    expect(made.map((entry) => entry.userName)).toEqual(['Owen Lea', 'Olive Fenn']);
    expect(await db.auditEntry.count({ where: { chain: floor.projectId, action: 'closeout made' } })).toBe(0);
  });

  it('the page lists each row with what is missing, and leads to where it is closed', async () => {
    const page = await floor.play.as('frank').get(`/jobs/${floor.projectId}/closeout?row=joints`);
    const [joint] = await floor.things('joints', RUN);
    const said = readPage(page.text);
    expect(said).toContain('Nothing in it is a permission to energise or to touch.');
    expect(said).toMatch(/Joints accepted each joint accepted by somebody who did none of its steps/);
    expect(page.text).toContain(`href="/jobs/${floor.projectId}/joints/${joint?.id}"`);
    expect(page.text).toContain(`href="/jobs/${floor.projectId}/closeout.zip"`);
    expect((await floor.play.as('ines').get(`/jobs/${floor.projectId}/closeout`)).status).toBe(403);
    expect((await floor.play.as('frank').get(`/jobs/${floor.projectId}/closeout?row=nonsense&page=-3`)).status).toBe(
      200,
    );
  });

  it('the API says of itself what it gives', async () => {
    const { paths } = (await floor.play.as('rita').get('/api/v1/openapi.json')).body;
    expect(paths['/api/v1/projects/{projectId}/closeout'].get.summary).toBe('The closeout package');
    expect(
      paths['/api/v1/projects/{projectId}/closeout/readiness'].get.parameters.map((of: { name: string }) => of.name),
    ).toEqual(expect.arrayContaining(['projectId', 'row', 'page', 'limit']));
  });
});
