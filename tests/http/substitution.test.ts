import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import type { RunDocument } from '../../src/document/job-document.ts';
import { forEachDatabase } from '../support/databases.ts';
import {
  BRANCH,
  CORNER,
  type Floor,
  HOLD,
  hung,
  RUN,
  releasedFloor,
  SET,
  TEE,
  type Thing,
  testBody,
} from '../support/floor.ts';
import { fieldsOf, readPage } from '../support/page.ts';

type Person = Parameters<Floor['play']['as']>[0];

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  const as = (person: Person = 'frank') => floor.play.as(person);
  const piece = async (run: string, mark: string): Promise<Thing> =>
    (await floor.things('sections', run)).find((one) => one.mark === `${run}-${mark}`)!;
  const offered = async (id: string, person: Person = 'frank') =>
    as(person).get(`${floor.job}/sections/${id}/substitutes`);
  const put = (id: string, version: string | number, lengthsMm: readonly number[], more: object = {}) =>
    as((more as { person?: Person }).person ?? 'frank')
      .post(`${floor.job}/sections/${id}/substitutions`)
      .set('if-match', `"${`${version}`.replaceAll('"', '')}"`)
      .set('idempotency-key', (more as { key?: string }).key ?? randomUUID())
      .send({ lengthsMm, cause: 'damaged', reason: 'dented on the lift' });
  /** Puts the first way that is offered in the place of a piece, and hands back what it made. */
  const substituted = async (run: string, mark: string) => {
    const { id } = await piece(run, mark);
    const ways = await offered(id);
    const made = await put(id, ways.headers.etag ?? '', ways.body.items[0].lengthsMm);
    expect(made.status, JSON.stringify(made.body)).toBe(201);
    return { id, made: made.body, way: ways.body.items[0] };
  };
  const runOf = async (key: string) => (await as('olive').get(`${floor.job}/runs/${await floor.runId(key)}`)).body;
  const change = async (key: string, next: (run: RunDocument) => RunDocument) => {
    const now = await runOf(key);
    return as('olive').put(`${floor.job}/runs/${now.id}`).set('if-match', `"${now.version}"`).send(next(now.document));
  };
  const release = (key: string) =>
    as('olive')
      .post(`${floor.job}/releases`)
      .send({ runs: [key], reason: 'redrawn' });
  const letGo = async (key: string, person: Person = 'olive') => {
    const now = await runOf(key);
    return as(person).delete(`${floor.job}/runs/${now.id}/field-hold`).set('if-match', `"${now.version}"`);
  };
  const lengths = (run: { layout: { sections: { fromMm: number; toMm: number }[] } }) =>
    run.layout.sections.map(({ fromMm, toMm }) => toMm - fromMm);

  describe('a damaged 20 ft piece in a run that is being built', () => {
    let before: Thing[];
    let gone: Thing;
    let joints: Thing[];
    it('is replaced by two of 10 ft: all other pieces keep identity, state and records', async () => {
      await floor.hangAll(RUN);
      joints = await floor.things('joints', RUN);
      const jointAt = (at: number) => joints.find(({ atMm }) => atMm === at)!.id;
      await floor.makeJoint(jointAt(6096));
      await floor.acceptJoint(jointAt(6096));
      await floor.makeJoint(jointAt(18_288), HOLD + 1);
      for (const hanger of await floor.things('supports', RUN)) await floor.take('ines', 'support', hanger.id, SET);
      floor.play.setClock('2026-05-12T13:30:00.000Z');
      await floor.take('quinn', 'run', await floor.runId(RUN), testBody());
      floor.play.setClock('2026-05-12T14:00:00.000Z');
      before = await floor.things('sections', RUN);
      gone = before.find(({ mark }) => mark.endsWith('P02'))!;
      const ways = await offered(gone.id);
      expect(ways.body.items[0]).toMatchObject({
        lengthsMm: [3048, 3048],
        taps: [{ id: 'T09', fromMm: 9067.8, toMm: 8763 }],
        stops: [],
      });
      const made = await put(gone.id, ways.headers.etag ?? '', [3048, 3048]);
      expect(made.body).toMatchObject({ run: RUN, revision: 2 });

      const after = await floor.things('sections', RUN);
      expect(after.map(({ mark, fromMm, toMm }) => [mark.slice(RUN.length + 1), fromMm, toMm])).toEqual([
        ['P01', 0, 6096],
        ['P05', 6096, 9144],
        ['P06', 9144, 12_192],
        ['P03', 12_192, 18_288],
        ['P04', 18_288, 21_336],
      ]);
      for (const mark of ['P01', 'P03', 'P04']) {
        const was = before.find((one) => one.mark.endsWith(mark))!;
        expect(after.find((one) => one.mark.endsWith(mark))?.id).toBe(was.id);
      }
    });

    it('the joints at its ends are to be made anew; what was recorded on the old ones stays with them', async () => {
      const now = await floor.things('joints', RUN);
      expect(now.map(({ atMm, state }) => [atMm, state])).toEqual(
        expect.arrayContaining([
          [6096, 'open'],
          [9144, 'open'],
          [12_192, 'open'],
          [18_288, 'seated'],
        ]),
      );
      const [made, untouched] = [6096, 12_192].map((at) => joints.find(({ atMm }) => atMm === at)!);
      expect((await floor.card('joints', untouched!.id)).retired).toBe(true);
      const card = await floor.card('joints', made!.id);
      expect(card.retired).toBe(true);
      expect(card.history.some(({ body }: { body: { kind: string } }) => body.kind === 'joint-accepted')).toBe(true);
      const states = new Map((await floor.things('sections', RUN)).map(({ mark, state }) => [mark.slice(-3), state]));
      expect([states.get('P01'), states.get('P03'), states.get('P05'), states.get('P06')]).toEqual([
        'hung',
        'hung',
        'planned',
        'planned',
      ]);
    });

    it('the piece itself is retired with its records, and its card says what took it out', async () => {
      const card = await floor.card('sections', gone.id);
      expect(card.retired).toBe(true);
      expect(card.history.map(({ body }: { body: { kind: string } }) => body.kind)).toContain('piece-hung');
      const page = await as('frank').get(`/jobs/${floor.projectId}/pieces/${gone.id}`);
      expect(readPage(page.text)).toContain(
        'Field revision 2 took this out of the run: Damaged: dented on the lift (Frank Dune). Its records stay; nothing more is recorded on it.',
      );
      expect(page.text).not.toContain('/substitution"');
      const again = await offered(gone.id);
      expect([again.status, again.body.title]).toEqual([409, `Piece ${RUN}-P02 has left the design`]);
    });

    it('hangers that are set stay set, and only those too near the new joint go', async () => {
      const hangers = await floor.things('supports', RUN);
      const set = hangers.filter(({ state }) => state === 'set');
      expect(set.length).toBeGreaterThanOrEqual(hangers.length - 1);
      for (const { atMm } of hangers) expect(Math.abs(atMm - 9144)).toBeGreaterThan(304.79);
    });

    it('the insulation test stands until the new sections are hung, and then counts no longer', async () => {
      const tests = async () => (await floor.checks(RUN)).tests;
      expect((await tests())[0]).toMatchObject({ stale: false });
      await floor.take('ines', 'piece', (await piece(RUN, 'P05')).id, hung('left'));
      expect((await tests())[0]).toMatchObject({ stale: true });
    });

    it('the design says the same as the floor: it is not changed, and nothing waits for a release', async () => {
      const now = await runOf(RUN);
      expect(now).toMatchObject({ revision: 2, changed: false, stops: 0 });
      expect(lengths(now)).toEqual([6096, 3048, 3048, 6096, 3048]);
      expect(now.document.taps.find(({ id }: { id: string }) => id === 'T09').atMm).toBe(8763);
      expect(now.document.fieldHold.sections).toEqual([
        { fromMm: 6096, toMm: 9144, kind: 'stock' },
        { fromMm: 9144, toMm: 12_192, kind: 'stock' },
      ]);
      const compared = await as('olive').get(`${floor.job}/runs/${now.id}/coverings`);
      expect(compared.body).toMatchObject({ held: true, compared: false, coverings: [{ lostBy: null, why: null }] });
    });

    it('the audit trail names the piece, the sections, the reason and the tap-off that moved', async () => {
      const page = readPage((await as('olive').get(`/jobs/${floor.projectId}/audit`)).text);
      expect(page).toContain('sections substituted');
    });
  });

  it('asked twice with one key it is done once; of two people at once one does it and one is told', async () => {
    const { id } = await piece('F2-R01-A', 'P01');
    const ways = await offered(id);
    const key = randomUUID();
    const first = await put(id, ways.headers.etag ?? '', ways.body.items[0].lengthsMm, { key });
    const again = await put(id, ways.headers.etag ?? '', ways.body.items[0].lengthsMm, { key });
    expect([first.status, again.status]).toEqual([201, 201]);
    expect(again.body).toEqual(first.body);
    expect((await runOf('F2-R01-A')).revision).toBe(2);

    const [other, next] = [await piece('F2-R01-A', 'P03'), await piece('F2-R01-A', 'P04')];
    const [seen, beside] = [await offered(other.id), await offered(next.id)];
    const both = await Promise.all([
      put(other.id, seen.headers.etag ?? '', seen.body.items[0].lengthsMm),
      put(next.id, beside.headers.etag ?? '', beside.body.items[0].lengthsMm, { person: 'olive' }),
    ]);
    expect(both.map(({ status }) => status).sort()).toEqual([201, 412]);
    const refused = both.find(({ status }) => status === 412);
    expect(refused?.headers['content-type']).toContain('application/problem+json');
    expect(refused?.body.title).not.toBe('');
    expect((await runOf('F2-R01-A')).revision).toBe(3);
    // The first substitution is held beside the second.
    expect((await runOf('F2-R01-A')).document.fieldHold.sections).toHaveLength(4);
  });

  it('foreman and office may; nobody else does, and nothing without the version that was read', async () => {
    const { id } = await piece('F2-R02-A', 'P01');
    for (const person of ['ines', 'quinn', 'owen', 'rita'] as const)
      expect((await offered(id, person)).status, person).toBe(403);
    expect((await offered(id, 'stan')).status).toBe(404);
    expect((await put(id, 1, [3048, 3048], { person: 'ines' })).status).toBe(403);
    const bare = await as()
      .post(`${floor.job}/sections/${id}/substitutions`)
      .send({ lengthsMm: [3048, 3048], cause: 'late', reason: 'still at sea' });
    expect(bare.status).toBe(428);
    const ways = await offered(id, 'olive');
    expect((await put(id, Number(ways.headers.etag?.replaceAll('"', '')) + 1, [3048, 3048])).status).toBe(412);
    const odd = await put(id, ways.headers.etag ?? '', [3000, 3096]);
    expect([odd.status, odd.body.title]).toEqual([409, 'These sections are none of the ways']);
    expect(odd.body.detail).toBe(
      '3000 + 3096 mm for F2-R02-A-P01, which is 6096 mm. Choose one of the ways that are offered for this piece.',
    );
    expect((await runOf('F2-R02-A')).revision).toBe(1);
    expect((await letGo('F2-R02-A', 'frank')).status).toBe(403);
    expect((await letGo('F2-R02-A')).body.title).toBe('Nothing is held');
  });

  it('a fitting is not made up of sections; a wall bars a joint and is named', async () => {
    const elbow = (await floor.things('sections', CORNER)).find(({ kind }) => kind === 'elbow')!;
    const told = await offered(elbow.id);
    expect([told.status, told.body.title]).toEqual([409, `Piece ${elbow.mark} is no straight section`]);
    const wall = await offered((await piece(CORNER, 'P03')).id);
    expect(wall.body.noJoint).toEqual([{ fromMm: 11_125.2, toMm: 12_649.2, by: `the fire-wall at 39'-0"` }]);
    expect(wall.body.barred[0]).toEqual({
      lengthsMm: [3048, 3048],
      jointAtMm: 12_192,
      by: `the fire-wall at 39'-0"`,
    });
  });

  it('a run with a tee and its branch take one each, and the other is left alone', async () => {
    const branch = await runOf(BRANCH);
    await substituted(TEE, 'P04');
    expect(await runOf(BRANCH)).toEqual(branch);
    await substituted(BRANCH, 'P02');
    expect(lengths(await runOf(BRANCH))).toEqual([6096, 1524, 1524]);
    expect((await runOf(TEE)).revision).toBe(2);
  });

  it('a tap-off that hangs already is not moved from here', async () => {
    const { id } = await piece('F2-R05-A', 'P02');
    const tap = (await floor.things('taps', 'F2-R05-A')).find(
      (one) => (one as unknown as { key: string }).key === 'T09',
    )!;
    const { db } = floor.play.context.database;
    await db.tap.update({ where: { id: tap.id }, data: { state: 'set' } });
    const ways = (await offered(id)).body.items as { lengthsMm: number[]; stops: string[] }[];
    expect(ways[0]?.lengthsMm).toEqual([1524, 3048, 1524]);
    const stopped = ways.find((way) => way.lengthsMm.join() === '3048,3048');
    expect(stopped?.stops[0]).toContain('Tap T09 at 29');
    const refused = await put(id, (await offered(id)).headers.etag ?? '', [3048, 3048]);
    expect([refused.status, refused.body.title]).toEqual([409, 'Not ready for the floor']);
  });

  describe('afterwards the office', () => {
    const KEY = 'F2-R03-A';
    it('edits, previews and changes many runs, and the sections are kept; a copy does not have them', async () => {
      await substituted(KEY, 'P02');
      expect((await change(KEY, (run) => ({ ...run, area: 'north hall' }))).status).toBe(200);
      const longer = await change(KEY, (run) => ({
        ...run,
        legs: run.legs.map((leg) => ({ ...leg, lengthMm: leg.lengthMm + 1524 })),
      }));
      expect(lengths(longer.body)).toEqual([6096, 3048, 3048, 6096, 3048, 1524]);
      const page = `/jobs/${floor.projectId}/runs/${await floor.runId(KEY)}`;
      const form = fieldsOf((await as('olive').get(`${page}/edit`)).text);
      const drawn = await as('olive').post(`${page}/drawing`).set('HX-Request', 'true').type('form').send(form);
      expect(readPage(drawn.text)).toContain('Kept to what the floor substituted');
      expect(readPage(drawn.text)).toMatch(/6 pieces/);
      const saved = await as('olive').post(`${page}/edit`).type('form').send(form);
      expect(saved.status, readPage(saved.text).slice(0, 300)).toBe(303);
      expect((await runOf(KEY)).document.fieldHold).toBeDefined();
      const many = { runs: [KEY], set: { area: 'south hall' } };
      const shown = await as('olive').post(`${floor.job}/run-changes`).send(many);
      expect([shown.status, shown.body.appearing, shown.body.disappearing]).toEqual([200, [], []]);
      const done = await as('olive')
        .post(`${floor.job}/run-changes`)
        .send({ ...many, commit: true, seen: shown.body.seen });
      expect(done.body.committed, JSON.stringify(done.body)).toBe(true);
      expect(lengths(await runOf(KEY))).toEqual([6096, 3048, 3048, 6096, 3048, 1524]);
      const copies = { runs: [KEY], rows: 1, pitch: { xMm: 0, yMm: 300_000 }, names: 'COPY' };
      const copied = await as('olive')
        .post(`${floor.job}/run-copies`)
        .send({ ...copies, commit: true });
      expect(copied.status, JSON.stringify(copied.body)).toBe(201);
      const copy = await runOf(copied.body.made[0]);
      expect([copy.document.fieldHold, lengths(copy)]).toEqual([undefined, [6096, 6096, 6096, 3048, 1524]]);
    });

    it('is told plainly where the route does not let them stand, and cannot release over them', async () => {
      const barred = await change(KEY, (run) => ({
        ...run,
        noJoint: [{ fromMm: 9000, toMm: 9300, reason: 'duct' }],
        taps: [],
      }));
      expect(barred.body.stops).toBe(1);
      expect(lengths(barred.body)).toEqual([6096, 6096, 6096, 3048, 1524]);
      const refused = await release(KEY);
      expect(refused.status).toBe(409);
      expect(refused.body.detail).toContain(`The floor put 10'-0" + 10'-0" from 20'-0" to 40'-0" into this run`);
      expect(refused.body.detail).toContain('let go of what the floor substituted');
    });

    it('lets go of them: an ordinary change, undone like one, and released like one', async () => {
      expect((await letGo(KEY)).status).toBe(204);
      expect(await runOf(KEY)).toMatchObject({ stops: 0, changed: true, revision: 2 });
      const steps = async () => (await as('olive').get(`${floor.job}/design-steps?run=${KEY}`)).body.items;
      const [step] = await steps();
      expect(step.action).toBe('substitution let go');
      expect((await as('olive').post(`${floor.job}/design-steps/${step.id}/undo`)).status).toBe(201);
      expect((await runOf(KEY)).stops).toBe(1);
      const [undone] = await steps();
      expect((await as('olive').post(`${floor.job}/design-steps/${undone.id}/undo`)).status).toBe(201);
      const released = await release(KEY);
      expect(released.status, JSON.stringify(released.body)).toBe(201);
      const page = readPage((await as('olive').get(`/jobs/${floor.projectId}/runs/${await floor.runId(KEY)}`)).text);
      expect(page).toMatch(/3 .*redrawn .*2, field .*Damaged: dented on the lift/);
      expect(page).not.toContain('Substituted on the floor');
    });

    it('exports the run with what is held, and a job made of the export is laid out the same', async () => {
      const job = (await as('ada').get(`${floor.job}/document`)).body;
      const held = job.runs.find((run: RunDocument) => run.id === TEE);
      expect(held.fieldHold).toBeDefined();
      const brought = await as('ada')
        .post('/api/v1/job-documents')
        .send({ ...job, project: { ...job.project, number: 'T-brought' } });
      expect(brought.status, JSON.stringify(brought.body).slice(0, 500)).toBe(201);
      const runs = (await as('ada').get(`/api/v1/projects/${brought.body.id}/runs?limit=500`)).body.items;
      const id = runs.find((run: { key: string }) => run.key === TEE).id;
      const there = (await as('ada').get(`/api/v1/projects/${brought.body.id}/runs/${id}`)).body;
      expect(there.layout).toEqual((await runOf(TEE)).layout);
    });
  });

  it('undone, the substitution leaves the design and stays on the floor until a release', async () => {
    const KEY = 'F2-R04-A';
    await substituted(KEY, 'P03');
    const [step] = (await as('olive').get(`${floor.job}/design-steps?run=${KEY}`)).body.items;
    expect(step).toMatchObject({ action: 'sections substituted', byName: 'Frank Dune', canUndo: true });
    expect((await as('olive').post(`${floor.job}/design-steps/${step.id}/undo`)).status).toBe(201);
    const now = await runOf(KEY);
    expect(now).toMatchObject({ revision: 2, changed: true });
    expect(lengths(now)).toEqual([6096, 6096, 6096, 3048]);
    const standing = await floor.things('sections', KEY);
    expect(standing).toHaveLength(5);
  });

  it('a design that the office has changed since stays changed, with the sections in it as well', async () => {
    const KEY = 'F2-R02-A';
    expect(
      (await change(KEY, (run) => ({ ...run, area: 'west hall', taps: (run.taps ?? []).slice(0, 8) }))).status,
    ).toBe(200);
    const { made } = await substituted(KEY, 'P02');
    expect(made.revision).toBe(2);
    const now = await runOf(KEY);
    expect(now).toMatchObject({ revision: 2, changed: true });
    expect(lengths(now)).toEqual([6096, 3048, 3048, 6096, 3048]);
    expect(now.document.taps).toHaveLength(8);
    expect((await floor.things('taps', KEY)).length).toBe(20);
  });

  it('where the office has drawn the route otherwise, the floor is not held up and the office is told', async () => {
    const zone = { fromMm: 7500, toMm: 7700, reason: 'duct' };
    expect((await change(CORNER, (run) => ({ ...run, noJoint: [...(run.noJoint ?? []), zone] }))).status).toBe(200);
    await substituted(CORNER, 'P02');
    const now = await runOf(CORNER);
    expect(now).toMatchObject({ revision: 2, changed: true, stops: 1 });
    const page = readPage((await as('olive').get(`/jobs/${floor.projectId}/runs/${now.id}`)).text);
    expect(page).toContain(`The floor put 5'-0" + 5'-0" from 20'-0" to 30'-0" into this run`);
    expect(page).toContain(`a joint at 25'-0" would stand where no joint may`);
  });

  describe('on the page', () => {
    const KEY = 'F2-R05-A';
    const address = async (mark: string) => `/jobs/${floor.projectId}/pieces/${(await piece(KEY, mark)).id}`;
    it('the card of a piece leads there for a foreman, and for no reader', async () => {
      const href = await address('P01');
      expect((await as('frank').get(href)).text).toContain(`href="${href}/substitution"`);
      expect((await as('rita').get(href)).text).not.toContain('/substitution"');
      expect((await as('rita').get(`${href}/substitution`)).status).toBe(403);
    });

    it('every way is told with its joints, hangers and tap-offs before anything is written', async () => {
      const page = readPage((await as('frank').get(`${await address('P01')}/substitution`)).text);
      expect(page).toContain(`10'-0" + 10'-0" : one joint more,`);
      expect(page).toContain(`New joint at 10'-0".`);
      expect(page).toMatch(/Made anew at its ends: J01 at 0" and J02 at 20'-0"\./);
      expect(page).toContain('isolated, locked out and proved dead');
    });

    it('what is left out is asked for beside its field, and what was typed stays', async () => {
      const href = `${await address('P01')}/substitution`;
      const form = fieldsOf((await as('frank').get(href)).text);
      const refused = await as('frank')
        .post(href)
        .type('form')
        .send({ ...form, reason: ' ', cause: 'late' });
      expect(refused.status).toBe(422);
      expect(readPage(refused.text)).toContain('Nothing is said. Say what happened to the piece.');
      expect(refused.text).toMatch(/<option value="late" selected/);
    });

    it('chosen, it is a field revision; the same page sent by somebody else is out of date and says so', async () => {
      const href = `${await address('P01')}/substitution`;
      const [mine, theirs] = [
        fieldsOf((await as('frank').get(href)).text),
        fieldsOf((await as('olive').get(href)).text),
      ];
      const sent = { cause: 'damaged', reason: 'crushed end' };
      const taken = await as('frank')
        .post(href)
        .type('form')
        .send({ ...mine, ...sent });
      expect(taken.status, readPage(taken.text).slice(0, 400)).toBe(303);
      const run = `/jobs/${floor.projectId}/runs/${await floor.runId(KEY)}`;
      expect(taken.headers.location).toContain(run.slice(run.indexOf('/runs/')));
      const page = readPage((await as('olive').get(run)).text);
      expect(page).toContain('Substituted on the floor');
      expect(page).toContain('Kept to what the floor substituted.');
      expect(page).not.toContain('It wins over every other.');
      expect(page).not.toContain('this one costs least');
      expect(page).toContain('2, field');
      const late = await as('olive')
        .post(href)
        .type('form')
        .send({ ...theirs, ...sent });
      expect(late.status).toBe(409);
      expect(readPage(late.text)).toContain('has left the design');
      const freed = await as('olive')
        .post(`${run}/free-layout`)
        .type('form')
        .send({ version: fieldsOf((await as('olive').get(run)).text).version });
      expect(freed.status).toBe(303);
      expect((await runOf(KEY)).document.fieldHold).toBeUndefined();
    });
  });
});
