import { beforeAll, expect, it } from 'vitest';
import { forEachDatabase } from '../../support/databases.ts';
import {
  BRANCH,
  CHECK,
  type Floor,
  HOLD,
  hung,
  LOWER_CLAMP,
  LOWER_TORQUE,
  POLES,
  RUN,
  releasedFloor,
  STEP_COUNT,
  stepBody,
  TEE,
  TOOL_OUT,
  TORQUE,
  UPPER_TORQUE,
} from '../../support/floor.ts';

forEachDatabase((open) => {
  let floor: Floor;
  // One job serves all tests of the file; each takes a joint that nobody touched before it.
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });

  it('a joint goes through its whole card: every step in order, closed, accepted by somebody else', async () => {
    const [first, second] = [await floor.things('sections', RUN), await floor.things('joints', RUN)];
    expect(second.map((row) => row.state)).toEqual(['open', 'open', 'open', 'open']);
    await floor.hangAll(RUN);
    const id = second[1]?.id ?? '';
    await floor.makeJoint(id, HOLD);
    expect((await floor.card('joints', id)).state).toBe('open');
    await floor.take('ines', 'joint', id, stepBody(HOLD));
    expect((await floor.card('joints', id)).state).toBe('seated');
    for (const step of [TOOL_OUT, LOWER_CLAMP, LOWER_TORQUE]) await floor.take('ines', 'joint', id, stepBody(step));
    const closed = await floor.card('joints', id);
    expect([closed.state, closed.next, closed.stepsDone]).toEqual(['closed', CHECK, STEP_COUNT - 1]);
    await floor.take('ivan', 'joint', id, stepBody(CHECK));
    const taken = await floor.acceptJoint(id);
    expect(taken.stands).toMatchObject({ mark: `${RUN}-J02`, state: 'accepted' });
    const card = await floor.card('joints', id);
    expect(card).toMatchObject({ state: 'accepted', next: null, accepted: { by: { name: 'Quinn Vale' } } });
    expect(card.steps.map((step: { done: { by: { name: string } } }) => step.done.by.name)).toEqual([
      ...Array.from({ length: STEP_COUNT - 1 }, () => 'Ines Holt'),
      'Ivan Brook',
    ]);
    expect(card.history).toHaveLength(STEP_COUNT + 1);
    expect(card.version).toBe(STEP_COUNT + 2);
    expect(first).toHaveLength(4);
  });

  it('a piece is joined when the joints at its ends are closed, and accepted when they are', async () => {
    const ids = (await floor.things('joints', TEE)).map((row) => row.id);
    await floor.hangAll(TEE);
    await floor.makeJoint(ids[0] ?? '');
    await floor.makeJoint(ids[1] ?? '');
    const states = async () => (await floor.things('sections', TEE)).map((row) => row.state).slice(0, 2);
    expect(await states()).toEqual(['joined', 'hung']);
    await floor.acceptJoint(ids[0] ?? '');
    expect(await states()).toEqual(['joined', 'hung']);
    await floor.acceptJoint(ids[1] ?? '');
    expect(await states()).toEqual(['accepted', 'hung']);
    await floor.take('frank', 'joint', ids[1] ?? '', { kind: 'joint-reopened', reason: 'seal strip left out' });
    expect(await states()).toEqual(['hung', 'hung']);
    expect((await floor.things('joints', TEE)).map((row) => row.state).slice(0, 2)).toEqual(['accepted', 'reopened']);
  });

  it('the first joint of a branch waits for the tee, which hangs on another run', async () => {
    const [tee] = (await floor.things('sections', TEE)).filter((row) => row.kind === 'tee');
    const [first] = await floor.things('joints', BRANCH);
    expect(tee?.state).toBe('hung');
    for (const piece of await floor.things('sections', BRANCH))
      await floor.take('ines', 'piece', piece.id, hung('right'));
    const card = await floor.card('joints', first?.id ?? '');
    expect(card.neighbours.map((one: { mark: string }) => one.mark)).toEqual([tee?.mark, `${BRANCH}-P01`]);
    expect((await floor.card('sections', tee?.id ?? '')).joints.map((one: { mark: string }) => one.mark)).toContain(
      first?.mark,
    );
    await floor.take('frank', 'piece', tee?.id ?? '', {
      kind: 'piece-quarantined',
      reason: 'tee cracked at the collar',
    });
    const refused = await floor.send('ines', 'joint', first?.id ?? '', stepBody(0));
    expect(refused.body).toMatchObject({ status: 409, reason: 'piece.quarantined' });
    expect(refused.body.detail).toContain('tee cracked at the collar');
  });

  it('bad input 32: step 9 before 7 is refused, because the lower clamp hides the blades', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, 7);
    const refused = await floor.send('ines', 'joint', joint.id, stepBody(LOWER_CLAMP));
    expect(refused.body).toMatchObject({ status: 409, reason: 'joint.hold-first', type: '/problems/record-refused' });
    expect(refused.body.detail).toMatch(/lower clamp hides/i);
    expect(refused.body.current).toMatchObject({ mark: joint.mark, state: 'open', version: 8 });
    expect((await floor.card('joints', joint.id)).next).toBe(HOLD);
  });

  it('a step out of order that hides nothing says which comes first', async () => {
    const joint = await floor.freshJoint();
    const refused = await floor.send('ines', 'joint', joint.id, stepBody(2));
    expect(refused.body).toMatchObject({ status: 409, reason: 'joint.out-of-order' });
    expect(refused.body.detail).toContain('step 1');
  });

  it('bad input 31: nobody who did a step may accept the joint, not even one step of twelve', async () => {
    const joint = await floor.freshJoint();
    await floor.take('frank', 'joint', joint.id, stepBody(0));
    for (let step = 1; step < CHECK; step += 1) await floor.take('ines', 'joint', joint.id, stepBody(step));
    await floor.take('ivan', 'joint', joint.id, stepBody(CHECK));
    const refused = await floor.send('frank', 'joint', joint.id, { kind: 'joint-accepted' });
    expect(refused.body).toMatchObject({ status: 409, reason: 'joint.own-work' });
    expect(refused.body.detail).toContain('Frank Dune');
    const { acts } = (await floor.play.as('frank').get(`${floor.job}/joints/${joint.id}`)).body;
    const accept = (list: { kind: string; bar: { code: string } | null }[]) =>
      list.find((act) => act.kind === 'joint-accepted')?.bar ?? null;
    expect(accept(acts)?.code).toBe('joint.own-work');
    expect(accept((await floor.play.as('quinn').get(`${floor.job}/joints/${joint.id}`)).body.acts)).toBeNull();
    expect(accept((await floor.play.as('ivan').get(`${floor.job}/joints/${joint.id}`)).body.acts)?.code).toBe(
      'capability',
    );
    await floor.acceptJoint(joint.id);
  });

  it('the check of a joint is another person’s look at it', async () => {
    const joint = await floor.freshJoint();
    for (let step = 0; step < CHECK; step += 1) await floor.take('ines', 'joint', joint.id, stepBody(step));
    const refused = await floor.send('ines', 'joint', joint.id, stepBody(CHECK));
    expect(refused.body).toMatchObject({ status: 409, reason: 'joint.check-own-work' });
    await floor.take('quinn', 'joint', joint.id, stepBody(CHECK));
  });

  it('every pole is seen at both ends, or the hold point is not passed', async () => {
    const { id } = await floor.freshJoint();
    await floor.makeJoint(id, HOLD);
    const seen = POLES.map((tick) => (tick.pole === 'L2' ? { ...tick, far: false } : tick));
    const refused = await floor.send('ines', 'joint', id, stepBody(HOLD, { poles: seen }));
    expect(refused.body).toMatchObject({ status: 409, reason: 'joint.poles-missing' });
    expect(refused.body.detail).toContain('L2 far end');
  });

  it('a torque with a tool past its calibration is kept as information and leaves the step open', async () => {
    const { id } = await floor.freshJoint();
    await floor.makeJoint(id, UPPER_TORQUE);
    const lapsed = stepBody(UPPER_TORQUE, { torque: { ...TORQUE, toolId: 'T-07', calibrationDue: '2026-05-09' } });
    const kept = await floor.take('ines', 'joint', id, lapsed);
    expect(kept.record.outcome).toBe('information-only');
    expect(kept.remarks[0]).toMatchObject({ code: 'tool.calibration-expired' });
    expect(`${kept.remarks[0].what} ${kept.remarks[0].number}`).toMatch(/T-07.*3 days/);
    const card = await floor.card('joints', id);
    expect([card.next, card.uncredited.at(-1).step]).toEqual([UPPER_TORQUE, UPPER_TORQUE]);
    const good = await floor.take('ines', 'joint', id, stepBody(UPPER_TORQUE));
    expect(good.record.outcome).toBe('credited');
    expect((await floor.card('joints', id)).next).toBe(UPPER_TORQUE + 1);
  });

  it('a joint whose neighbour is not hung is refused with its mark', async () => {
    const corner = await floor.things('joints', 'F3-R06-A');
    const [first] = await floor.things('sections', 'F3-R06-A');
    await floor.take('ines', 'piece', first?.id ?? '', hung('left'));
    const refused = await floor.send('ines', 'joint', corner[1]?.id ?? '', stepBody(0));
    expect(refused.body).toMatchObject({ status: 409, reason: 'joint.neighbour-not-hung' });
    expect(refused.body.detail).toContain('F3-R06-A-P02');
  });

  it('two people recording the same step at once: one is kept, the other is told what stands now', async () => {
    const { id } = await floor.freshJoint();
    const before = await floor.card('joints', id);
    const both = await Promise.all([
      floor.send('ines', 'joint', id, stepBody(0)),
      floor.send('ivan', 'joint', id, stepBody(0)),
    ]);
    expect(both.map((answer) => answer.status).sort()).toEqual([201, 409]);
    const [won, lost] = both[0]?.status === 201 ? ['Ines Holt', both[1]] : ['Ivan Brook', both[0]];
    expect(lost?.body).toMatchObject({
      reason: 'joint.step-done',
      current: { version: before.version + 1, last: { by: won, kind: 'joint-step' } },
    });
    const after = await floor.card('joints', id);
    expect([after.version, after.history.length]).toEqual([before.version + 1, before.history.length + 1]);
    expect(after.steps[0].done.by.name).toBe(won);
  });

  it('whoever says which reading was seen is refused on an older one', async () => {
    const { id } = await floor.freshJoint();
    await floor.take('ines', 'joint', id, stepBody(0));
    const { version } = await floor.card('joints', id);
    const body = stepBody(1);
    const stale = await floor.send('ines', 'joint', id, body, { seenVersion: version - 1 });
    expect(stale.body).toMatchObject({ status: 412, reason: 'record.stale', currentVersion: version });
    const sent = {
      submissionId: 'with-if-match',
      at: floor.play.context.clock().toISOString(),
      subject: 'joint',
      subjectId: id,
    };
    const post = (tag: string) =>
      floor.play
        .as('ines')
        .post(`${floor.job}/inspections`)
        .set('if-match', tag)
        .send({ ...sent, body });
    expect((await post(`"${version - 1}"`)).status).toBe(412);
    const taken = await post(`"${version}"`);
    expect([taken.status, taken.headers.etag]).toEqual([201, `"${version + 1}"`]);
  });

  it('a step corrected with its cause keeps its turn, and a withdrawn one opens what came after', async () => {
    const { id } = await floor.freshJoint();
    await floor.makeJoint(id, HOLD + 1);
    const torque = (await floor.card('joints', id)).steps[UPPER_TORQUE].done;
    const corrected = await floor.take('ivan', 'joint', id, stepBody(UPPER_TORQUE), {
      supersedes: { id: torque.recordId, cause: 'Ivan held the wrench' },
    });
    const card = await floor.card('joints', id);
    expect([card.next, card.state]).toEqual([TOOL_OUT, 'seated']);
    expect(card.steps[UPPER_TORQUE].done.by.name).toBe('Ivan Brook');
    const old = card.history.find((one: { id: string }) => one.id === torque.recordId);
    expect([old.supersededBy, card.history.at(-1).supersedes.cause]).toEqual([
      corrected.record.id,
      'Ivan held the wrench',
    ]);
    const again = await floor.send('ivan', 'joint', id, stepBody(UPPER_TORQUE), {
      supersedes: { id: torque.recordId, cause: 'once more' },
    });
    expect(again.body).toMatchObject({ status: 409, reason: 'record.already-superseded' });
    const hold = card.steps[HOLD].done.recordId;
    await floor.take(
      'ines',
      'joint',
      id,
      { kind: 'record-withdrawn' },
      {
        supersedes: { id: hold, cause: 'the lamp was off' },
      },
    );
    const after = await floor.card('joints', id);
    expect([after.next, after.state]).toEqual([HOLD, 'open']);
  });

  it('the make-up of joints cannot be rewritten under a joint that was begun on it', async () => {
    const office = floor.play.as('olive');
    const { items } = (await office.get(`${floor.job}/busway-types`)).body;
    const [type] = items;
    const send = (document: object) =>
      office.put(`${floor.job}/busway-types/${type.id}`).set('if-match', `"${type.version}"`).send(document);
    const { joint } = type.document;
    const shorter = await send({ ...type.document, joint: { ...joint, steps: joint.steps.slice(1) } });
    expect([shorter.status, shorter.body.type]).toEqual([409, '/problems/in-use']);
    expect(shorter.body.detail).toContain('make another busway type');
    expect((await send({ ...type.document, weightKgPerM: type.document.weightKgPerM + 1 })).status).toBe(200);
  });
});
