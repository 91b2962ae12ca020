import { beforeAll, expect, it } from 'vitest';
import { forEachDatabase } from '../../support/databases.ts';
import { type Floor, RUN, releasedFloor, TORQUE, testBody, UPPER_TORQUE } from '../../support/floor.ts';
import { readPage } from '../../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  let joints: string[];
  const day = (more = 0) =>
    new Date(floor.play.context.clock().getTime() + more * 86_400_000).toISOString().slice(0, 10);
  const lapse = (person: 'quinn' | 'ines', more: object = {}) =>
    floor.play
      .as(person)
      .post(`${floor.job}/tool-lapses`)
      .send({ tool: TORQUE.toolId, lastGood: day(-1), cause: 'The yearly check read 12 % low', ...more });

  beforeAll(async () => {
    floor = await releasedFloor(await open());
    await floor.hangAll(RUN);
    joints = (await floor.things('joints', RUN)).slice(0, 3).map(({ id }) => id);
    await floor.makeJoint(joints[0]!);
    await floor.acceptJoint(joints[0]!);
    await floor.makeJoint(joints[1]!, UPPER_TORQUE + 1);
    await floor.makeJoint(joints[2]!, UPPER_TORQUE);
    await floor.take(
      'quinn',
      'run',
      await floor.runId(RUN),
      testBody({ instrument: { ...testBody().instrument, id: 'T-03' } }),
    );
    return () => floor.close();
  });
  const state = async (index: number) => (await floor.card('joints', joints[index]!)).state;

  it('the tools that the records name are listed with their uses', async () => {
    const { status, body } = await floor.play.as('rita').get(`${floor.job}/tools`);
    expect(status).toBe(200);
    // Two torques on the finished joint, one on the second, none on the third, and the test.
    expect(body.items).toMatchObject([{ tool: 'T-03', entries: 4, calibrationDue: ['2026-11-30'] }]);
  });

  it('the page shows what would reopen before anything is written', async () => {
    const path = `/jobs/${floor.projectId}/inspections/tools?tool=T-03&lastGood=${day(-1)}`;
    const said = readPage((await floor.play.as('quinn').get(path)).text);
    expect(said).toContain('4 entries');
    expect(said).toContain('Reopen 2 joints and one insulation test');
    expect(readPage((await floor.play.as('ines').get(path)).text)).toContain('An inspector reopens them.');
    expect(await state(0)).toBe('accepted');
  });

  it('a day that is none, a missing cause and a person who may not are refused, and nothing reopens', async () => {
    const wrong = await lapse('quinn', { lastGood: '9 May', cause: '' });
    expect(wrong.status).toBe(422);
    expect(JSON.stringify(wrong.body.errors)).toContain('lastGood');
    expect(JSON.stringify(wrong.body.errors)).toContain('cause');
    expect((await lapse('ines')).status).toBe(403);
    expect(await state(0)).toBe('accepted');
  });

  it('a tool that was good until today touches nothing', async () => {
    const { status, body } = await lapse('quinn', { lastGood: day() });
    expect(status).toBe(201);
    expect(body).toMatchObject({ entries: [], joints: 0, tests: 0 });
  });

  it('joints reopen at the torque, the test counts no longer, and their records stay in the book', async () => {
    const { status, body } = await lapse('quinn');
    expect(status, JSON.stringify(body)).toBe(201);
    expect(body).toMatchObject({ joints: 2, tests: 1 });
    expect(body.entries).toHaveLength(4);
    expect(await state(0)).toBe('reopened');
    expect(await state(1)).toBe('reopened');
    const card = await floor.card('joints', joints[0]!);
    expect(JSON.stringify(card)).toContain(`T-03 was last known good on ${day(-1)}. The yearly check read 12 % low`);
    const book = (await floor.play.as('rita').get(`${floor.job}/inspections?kind=joint-step&limit=500`)).body;
    expect(book.items.filter((one: { body: { torque?: unknown } }) => one.body.torque).length).toBe(3);
    const tests = (await floor.checks(RUN)).tests.filter((one: { counts: boolean }) => one.counts);
    expect(tests).toEqual([]);
  });

  it('asked again, it says that nothing rests on the tool any more and reopens nothing twice', async () => {
    const { body } = await lapse('quinn');
    expect(body).toMatchObject({ joints: 0, tests: 0 });
    expect(new Set(body.entries.map((entry: { becomes: string }) => entry.becomes))).toEqual(new Set(['open-already']));
  });
});
