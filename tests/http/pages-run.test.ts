import { beforeAll, expect, it } from 'vitest';
import { forEachDatabase } from '../support/databases.ts';
import { CORNER, DRAFT, type Floor, hung, RUN, releasedFloor, SET } from '../support/floor.ts';
import { fieldsOf, readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  const at = async (key: string) => `/jobs/${floor.projectId}/runs/${await floor.runId(key)}`;
  const get = async (person: Parameters<Floor['play']['as']>[0], key: string, rest = '') =>
    floor.play.as(person).get(`${await at(key)}${rest}`);
  const edit = async (key: string, change: Record<string, string>) => {
    const fields = fieldsOf((await get('olive', key, '/edit')).text);
    return floor.play
      .as('olive')
      .post(`${await at(key)}/edit`)
      .type('form')
      .send({ ...fields, ...change });
  };

  it('the page of a run says which way tap-offs face, leg by leg, before anything is hung', async () => {
    expect(readPage((await get('frank', RUN)).text)).toContain('Tap-offs face north , left of the way from the feed.');
    const corner = readPage((await get('frank', CORNER)).text);
    expect(corner).toContain('Tap-offs face north on leg 1, west on leg 2');
    expect(corner).toContain('elbow, conductors inside the bend');
  });

  it('every piece, joint, hanger and tap-off stands with its state and leads to its card', async () => {
    const [piece] = await floor.things('sections', RUN);
    const [joint] = await floor.things('joints', RUN);
    const [support] = await floor.things('supports', RUN);
    await floor.take('ines', 'piece', piece?.id ?? '', hung('left'));
    await floor.take('ines', 'support', support?.id ?? '', { ...SET, measuredMm: 600 });
    const page = await get('frank', RUN);
    expect(page.text).toContain(`/pieces/${piece?.id}"`);
    expect(page.text).toContain(`/joints/${joint?.id}"`);
    expect(page.text).toContain(`/hangers/${support?.id}"`);
    const said = readPage(page.text);
    expect(said).toMatch(/P01 section 20'-0" 0" hung/);
    // 600 mm is 23.622 in: no whole sixteenth, nearly 23 5/8.
    expect(said).toMatch(/H01 2'-0" ≈1'-11 5\/8" \d+\.\d lb \d+\.\d lb set/);
    expect(said).toContain('For the next status: 3 of 4 pieces to hang');
  });

  it('what a covering costs is shown to the office alone, and no page of anybody else holds money', async () => {
    expect(readPage((await get('olive', RUN)).text)).toContain(
      'cost = pieces + cut surcharges + joint kits + joint labour',
    );
    for (const person of ['frank', 'ines', 'quinn', 'owen', 'rita'] as const) {
      const said = (await get(person, RUN)).text;
      expect(said).not.toContain('Cost of the covering');
      expect(said).not.toMatch(/\$\d/);
    }
  });

  it('the hours of a run open to their factors', async () => {
    const said = readPage((await get('frank', RUN)).text);
    expect(said).toContain('hours = quantity × base hours × condition factor × learning × non-productive');
    expect(said).toMatch(/make up joints 4 0\.6 h × 1\.150 × \d\.\d{3}/);
  });

  it('millimetres typed into feet are answered beside the field with the other reading, and everything typed stays', async () => {
    const refused = await edit(DRAFT, { 'legs[0].lengthMm': '21336', area: 'Hall 1 north' });
    expect(refused.status).toBe(422);
    const said = readPage(refused.text);
    expect(said).toContain('21,336 ft is 4 miles. 21,336 mm = 70.0 ft. If you meant millimetres, write 21336 mm.');
    expect(refused.text).toContain('id="f-legs-0--lengthMm-fault"');
    expect(refused.text).toContain('name="legs[2].lengthMm"');
    expect(refused.text).not.toContain('name="legs[3].lengthMm"'); // one leg, and two rows that stand empty for more
    expect(fieldsOf(refused.text)).toMatchObject({ 'legs[0].lengthMm': '21336', area: 'Hall 1 north' });
  });

  it('decimal feet that may be feet and inches are asked about once, and then taken as typed', async () => {
    const asked = await edit(DRAFT, { dropMm: '10.6' });
    expect(asked.status).toBe(422);
    expect(readPage(asked.text)).toContain(`10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`);
    const kept = await floor.play
      .as('olive')
      .post(`${await at(DRAFT)}/edit`)
      .type('form')
      .send(fieldsOf(asked.text));
    expect(kept.status).toBe(303);
    const { document } = (await floor.play.as('olive').get(`${floor.job}/runs/${await floor.runId(DRAFT)}`)).body;
    expect(document.dropMm).toBe(3230.875); // 10.6 ft is 3230.88 mm; lengths stand on a grid of 1/80 mm
  });

  it('a form that is saved untouched changes nothing of the run', async () => {
    const id = await floor.runId(CORNER);
    const before = (await floor.play.as('olive').get(`${floor.job}/runs/${id}`)).body;
    expect((await edit(CORNER, {})).status).toBe(303);
    const after = (await floor.play.as('olive').get(`${floor.job}/runs/${id}`)).body;
    expect(after.document).toEqual(before.document);
    expect(after.version).toBe(before.version);
    expect(after.changed).toBe(false);
  });

  it('two people who change different entries both keep theirs', async () => {
    const fields = fieldsOf((await get('olive', DRAFT, '/edit')).text);
    await edit(DRAFT, { area: 'Hall 7' });
    const stale = await floor.play
      .as('olive')
      .post(`${await at(DRAFT)}/edit`)
      .type('form')
      .send({ ...fields, rod: '1/2' });
    expect(stale.status).toBe(412);
    expect(readPage(stale.text)).toContain('You changed different entries');
    expect(fieldsOf(stale.text)).toMatchObject({ area: 'Hall 7', rod: '1/2' });
    const saved = await floor.play
      .as('olive')
      .post(`${await at(DRAFT)}/edit`)
      .type('form')
      .send(fieldsOf(stale.text));
    expect(saved.status).toBe(303);
    const { document } = (await floor.play.as('olive').get(`${floor.job}/runs/${await floor.runId(DRAFT)}`)).body;
    expect(document).toMatchObject({ area: 'Hall 7', rod: '1/2' });
  });

  it('two people who change the same entry see both values side by side, and nothing typed is lost', async () => {
    const fields = fieldsOf((await get('olive', DRAFT, '/edit')).text);
    await edit(DRAFT, { area: 'Hall of theirs' });
    const stale = await floor.play
      .as('olive')
      .post(`${await at(DRAFT)}/edit`)
      .type('form')
      .send({ ...fields, area: 'Hall of mine' });
    expect(stale.status).toBe(412);
    expect(readPage(stale.text)).toContain('Room or area Hall of mine Hall of theirs');
    expect(readPage(stale.text)).toContain('Take theirs');
    expect(fieldsOf(stale.text).area).toBe('Hall of mine');
  });

  it('a tap-off whose cell cannot be read is told by row and column, and the sheet stays as typed', async () => {
    const { taps = '' } = fieldsOf((await get('olive', DRAFT, '/edit')).text);
    const wrong = taps.replace('\tL2\t', '\tB\t');
    const refused = await edit(DRAFT, { taps: wrong });
    expect(refused.status).toBe(422);
    expect(readPage(refused.text)).toContain('3 phases B "B" could be a feed side. A-side or phase L1?');
    expect(fieldsOf(refused.text).taps).toBe(wrong);
  });

  it('tap-offs keep what the list has no column for', async () => {
    const id = await floor.runId(DRAFT);
    const taps = async () => (await floor.play.as('olive').get(`${floor.job}/runs/${id}`)).body.document.taps;
    const before = await taps();
    const { taps: sheet = '' } = fieldsOf((await get('olive', DRAFT, '/edit')).text);
    expect((await edit(DRAFT, { taps: sheet.replace('\t30\t', '\t40\t') })).status).toBe(303);
    expect(await taps()).toEqual([{ ...before[0], deviceA: 40 }, ...before.slice(1)]);
    expect(before[0].dropMm).toBeGreaterThan(0);
  });

  it('a fault that only the whole document shows stands beside its field too', async () => {
    const refused = await edit(DRAFT, { pairedRun: 'F1-R01-X' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('id="f-pairedRun-fault"');
    expect(readPage(refused.text)).toContain('F1-R01-X');
  });

  it('a row that was left empty is passed over, and a fault in the next one keeps to its own row', async () => {
    const refused = await edit(CORNER, {
      'noJoint[0].fromMm': '',
      'noJoint[1].fromMm': '12 ft',
      'noJoint[1].toMm': '10 ft',
    });
    expect(refused.status).toBe(422);
    expect(refused.text).toMatch(/id="f-noJoint-1--(from|to)Mm-fault"/);
  });

  it('a new run is made from the form, laid out, and removed again after asking', async () => {
    const path = `/jobs/${floor.projectId}/runs/new`;
    const fields = {
      id: 'F1-R09-A',
      level: 'F1',
      type: 'demo-250A-3PN',
      conductorSide: 'left',
      'feed.kind': 'end',
      'legs[0].lengthMm': '70 ft',
      supportCapacityKg: '330 lb',
      submissionId: 'new-run',
    };
    const olive = floor.play.as('olive');
    const made = await olive.post(path).type('form').send(fields);
    expect(made.status).toBe(303);
    const again = await floor.play.as('olive').post(path).type('form').send(fields);
    expect(again.headers.location).toBe(made.headers.location);
    const page = await floor.play.as('olive').get((made.headers.location ?? '').split('?')[0] ?? '');
    expect(readPage(page.text)).toContain('Release F1-R09-A');
    const { document } = (await floor.play.as('olive').get(`${floor.job}/runs/${await floor.runId('F1-R09-A')}`)).body;
    expect(document.supportCapacityKg).toBeCloseTo(330 * 0.45359237, 6); // the pound of 1959, exact
    const { version = '' } = fieldsOf((await get('olive', 'F1-R09-A', '/edit')).text);
    const removed = await floor.play
      .as('olive')
      .post(`${await at('F1-R09-A')}/removal`)
      .type('form')
      .send({ version });
    expect(removed.status).toBe(303);
    expect(readPage((await floor.play.as('olive').get(`/jobs/${floor.projectId}/floors`)).text)).not.toContain(
      'F1-R09-A',
    );
  });

  it('the label of a released run is fixed, and the form says so', async () => {
    const refused = await edit(RUN, { id: 'F1-R77-A' });
    expect(refused.status).toBe(409);
    expect(readPage(refused.text)).toContain('labels and records carry it since its release');
  });

  it('a stop bars the release beside the button, with the number and the remedy', async () => {
    expect((await edit(DRAFT, { 'legs[0].lengthMm': '61 ft', taps: '' })).status).toBe(303);
    const page = await get('olive', DRAFT);
    expect(page.text).toMatch(/<button[^>]*disabled[^>]*>Release F1-R01-B<\/button>/);
    expect(readPage(page.text)).toMatch(/Stop .*F1-R01-B/);
    const refused = await floor.play
      .as('olive')
      .post(`${await at(DRAFT)}/releases`)
      .type('form')
      .send({});
    expect(refused.status).toBe(409);
    expect(readPage(refused.text)).toContain('F1-R01-B:');
  });

  it('a released run that is changed shows both strips, asks why, and keeps its pieces until it is released again', async () => {
    const before = (await floor.things('sections', RUN)).map((piece) => piece.id);
    expect((await edit(RUN, { 'legs[0].lengthMm': '80 ft', 'end.reachMm': '', 'end.hardStopMm': '' })).status).toBe(
      303,
    );
    const page = await get('olive', RUN);
    const said = readPage(page.text);
    expect(said).toContain('Strip of revision 1, as the floor has it');
    expect(said).toContain('Strip of the design as it stands now');
    expect((await floor.things('sections', RUN)).map((piece) => piece.id)).toEqual(before);
    const released = await floor.play
      .as('olive')
      .post(`${await at(RUN)}/releases`)
      .type('form')
      .send({ reason: 'The hall grew' });
    expect(released.status).toBe(303);
    expect(readPage((await get('olive', RUN)).text)).toContain('Olive Fenn The hall grew');
    // 20/20/20/10 grew to four of 20 ft: the hung first piece is the same piece, with its record.
    expect((await floor.things('sections', RUN))[0]?.id).toBe(before[0]);
    expect((await floor.things('sections', RUN))[0]?.state).toBe('hung');
  });
});
