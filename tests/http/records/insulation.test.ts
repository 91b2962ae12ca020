import { beforeAll, expect, it } from 'vitest';
import { forEachDatabase } from '../../support/databases.ts';
import {
  BRANCH,
  CORNER,
  type Floor,
  hung,
  RUN,
  releasedFloor,
  SET,
  TEE,
  testBody,
  withReading,
} from '../../support/floor.ts';

const CLOSE = { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true } as const;

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  const test = async (run: string, body = testBody(), more = {}) =>
    floor.send('quinn', 'run', await floor.runId(run), body, more);
  const rulePath = () => `${floor.job}/insulation-rule`;

  it('the rule is chosen by the office before the first test', async () => {
    const read = await floor.play.as('rita').get(rulePath());
    expect(read.body).toMatchObject({ rule: null, locked: false });
    const put = (person: 'ines' | 'olive', rule: string, tag: string) =>
      floor.play.as(person).put(rulePath()).set('if-match', tag).send({ rule });
    expect((await put('ines', 'busway-guide', read.headers.etag ?? '')).status).toBe(403);
    const chosen = await put('olive', 'busway-guide', read.headers.etag ?? '');
    expect([chosen.status, chosen.body.rule, chosen.body.locked]).toEqual([200, 'busway-guide', false]);
    expect((await put('olive', 'acceptance-1000ft', read.headers.etag ?? '')).status).toBe(412);
    expect((await put('olive', 'acceptance-1000ft', chosen.headers.etag ?? '')).body.rule).toBe('acceptance-1000ft');
  });

  it('ten pairs beyond the meter’s range pass, and the reading comes back as written', async () => {
    const taken = await test(RUN);
    expect(taken.body.record, JSON.stringify(taken.body)).toMatchObject({ outcome: 'pass' });
    const [judged] = (await floor.checks(RUN)).tests;
    expect(judged).toMatchObject({ verdict: 'pass', counts: true, stale: false });
    expect(judged.pairs).toHaveLength(10);
    expect(judged.pairs[0].reading).toEqual({
      kind: 'value',
      comparator: '>',
      value: 5000,
      unit: 'MΩ',
      written: '5000',
    });
    expect(judged.criterion).toContain('70');
  });

  it('the first test locks the rule: neither the office nor another test changes it', async () => {
    const read = await floor.play.as('olive').get(rulePath());
    expect(read.body).toMatchObject({ rule: 'acceptance-1000ft', locked: true });
    const put = await floor.play
      .as('olive')
      .put(rulePath())
      .set('if-match', read.headers.etag ?? '')
      .send({ rule: 'busway-guide' });
    expect(put.body).toMatchObject({ status: 409, reason: 'insulation.rule-locked' });
    expect(put.body.detail).toContain('limits are not changed after the first reading');
    const other = await test(CORNER, testBody({ rule: 'busway-guide' }));
    expect(other.body).toMatchObject({ status: 409, reason: 'insulation.rule-locked' });
  });

  it('a missing pair is no pass, and a blank is not nought', async () => {
    const nine = testBody().readings.slice(0, 9);
    expect((await test(CORNER, testBody({ readings: nine }))).body.record.outcome).toBe('incomplete');
    const blank = await test(CORNER, testBody({ readings: withReading('L1-N', { kind: 'blank' }) }));
    expect(blank.body.record.outcome).toBe('incomplete');
    const pair = (await floor.checks(CORNER)).tests[0].pairs.find((row: { pair: string }) => row.pair === 'L1-N');
    expect(pair).toMatchObject({ reading: { kind: 'blank' }, megohm: null, verdict: 'incomplete' });
  });

  it('0.00 from neutral to ground fails, with the bond that was probably not lifted', async () => {
    const zero = { kind: 'value', comparator: '=', value: 0, unit: 'MΩ', written: '0.00' } as const;
    const taken = await test('F2-R02-A', testBody({ readings: withReading('N-G', zero) }));
    expect(taken.body.record.outcome).toBe('fail');
    const pair = (await floor.checks('F2-R02-A')).tests[0].pairs.find((row: { pair: string }) => row.pair === 'N-G');
    expect(pair).toMatchObject({ reading: zero, megohm: 0, verdict: 'fail', note: 'bond-not-lifted' });
  });

  it('bad input 39: a failed test cannot be deleted or withdrawn; a new test supersedes it with the cause and both stay', async () => {
    const id = await floor.runId('F2-R02-A');
    const [failed] = (await floor.checks('F2-R02-A')).tests;
    const withdrawn = await floor.send(
      'quinn',
      'run',
      id,
      { kind: 'record-withdrawn' },
      {
        supersedes: { id: failed.recordId, cause: 'should not count' },
      },
    );
    expect(withdrawn.body).toMatchObject({ status: 409, reason: 'record.failed-test-withdrawn' });
    const deleted = await floor.play.as('ada').delete(`${floor.job}/inspections/${failed.recordId}`);
    expect(deleted.status).toBe(404);
    const again = await test('F2-R02-A', testBody(), {
      supersedes: { id: failed.recordId, cause: 'neutral bond lifted, tested again' },
    });
    expect(again.body.record).toMatchObject({ outcome: 'pass', supersedes: { id: failed.recordId } });
    const both = (await floor.checks('F2-R02-A')).tests;
    expect(both.map((one: { verdict: string; stands: boolean }) => [one.verdict, one.stands])).toEqual([
      ['pass', true],
      ['fail', false],
    ]);
    const old = await floor.play.as('rita').get(`${floor.job}/inspections/${failed.recordId}`);
    expect(old.body).toMatchObject({ outcome: 'fail', supersededBy: again.body.record.id });
  });

  it('82 °C is asked about, and taken once it is confirmed; the same with 100 ft typed on a 70 ft run', async () => {
    const hot = testBody({ surfaceTempC: 82 });
    const asked = await test('F2-R03-A', hot);
    expect(asked.body).toMatchObject({ status: 409, reason: 'insulation.question-open' });
    expect(asked.body.detail).toMatch(/82.*27\.8/);
    expect((await test('F2-R03-A', { ...hot, confirmed: ['temperature-high'] })).status).toBe(201);
    const long = testBody({ lengthTypedMm: 30480 });
    const length = await test('F2-R03-A', long);
    expect(length.body).toMatchObject({ status: 409, reason: 'insulation.question-open' });
    expect(length.body.detail).toMatch(/100.*70/);
    expect((await test('F2-R03-A', { ...long, confirmed: ['length-differs'] })).status).toBe(201);
  });

  it('an instrument past its calibration makes the test information only', async () => {
    const lapsed = testBody({ instrument: { id: 'T-07', calibrationDue: '2026-05-09', topRange: null } });
    const taken = await test('F2-R04-A', lapsed);
    expect(taken.body.record.outcome).toBe('information-only');
    expect(taken.body.remarks.map((remark: { code: string }) => remark.code)).toContain('tool.calibration-expired');
    const { status, open: missing } = await floor.checks('F2-R04-A');
    expect(status).toBe('planned');
    expect(missing.map((point: { code: string }) => point.code)).toContain('pieces-not-hung');
  });

  it('a run walks from planned over installation and completion to tested, and nothing says that it may be energised', async () => {
    const run = 'F2-R05-A';
    const id = await floor.runId(run);
    const status = async () => (await floor.checks(run)).status;
    expect(await status()).toBe('planned');
    for (const support of await floor.things('supports', run)) await floor.take('ines', 'support', support.id, SET);
    expect(await status()).toBe('in-installation');
    await floor.hangAll(run);
    await floor.take('ines', 'run', id, CLOSE);
    await floor.take('ines', 'run', id, { kind: 'slot-closed' });
    for (const joint of await floor.things('joints', run)) {
      await floor.makeJoint(joint.id);
      await floor.acceptJoint(joint.id);
    }
    expect(await status()).toBe('mechanically-complete');
    floor.play.setClock('2026-05-12T14:00:00.000Z');
    expect((await test(run)).body.record.outcome).toBe('pass');
    const checks = await floor.checks(run);
    expect([checks.status, checks.open]).toEqual(['tested', []]);
    expect(JSON.stringify(checks)).not.toMatch(/energis|gate/i);
  });

  it('a joint reopened after the test makes it stale, and the run is no longer tested', async () => {
    const run = 'F2-R05-A';
    const [joint] = await floor.things('joints', run);
    floor.play.setClock('2026-05-12T15:10:00.000Z');
    await floor.take('quinn', 'joint', joint?.id ?? '', {
      kind: 'joint-reopened',
      reason: 'thermal scan found it warm',
    });
    const checks = await floor.checks(run);
    expect(checks.status).toBe('in-installation');
    expect(checks.tests[0]).toMatchObject({ verdict: 'pass', counts: true, stale: true });
    expect(checks.tests[0].staleBecause).toEqual([
      { run, mark: joint?.mark, kind: 'joint-reopened', at: '2026-05-12T15:10:00.000Z' },
    ]);
    await floor.makeJoint(joint?.id ?? '');
    await floor.acceptJoint(joint?.id ?? '');
    const made = await floor.checks(run);
    expect([made.status, made.open.map((point: { code: string }) => point.code)]).toEqual([
      'mechanically-complete',
      ['test-stale'],
    ]);
  });

  it('a test of the parent goes stale by work on the branch that is teed off it, and on no other run', async () => {
    floor.play.setClock('2026-05-12T16:00:00.000Z');
    await test(TEE);
    await test('F2-R01-A');
    floor.play.setClock('2026-05-12T16:30:00.000Z');
    const [piece] = await floor.things('sections', BRANCH);
    await floor.take('ines', 'piece', piece?.id ?? '', hung('right'));
    const [parent, other] = [await floor.checks(TEE), await floor.checks('F2-R01-A')];
    expect(parent.tests[0].staleBecause).toMatchObject([{ run: BRANCH, mark: `${BRANCH}-P01`, kind: 'piece-hung' }]);
    expect([parent.tests[0].stale, other.tests[0].stale]).toEqual([true, false]);
  });

  it('the office’s floor board tells the same status as the run’s own checks', async () => {
    const { progressOf } = await import('../../../src/actions/progress.ts');
    const { runs } = await progressOf(floor.play.context.database.db, floor.projectId);
    for (const key of [RUN, TEE, BRANCH, 'F2-R05-A', 'F2-R04-A']) {
      const { status, open: missing } = await floor.checks(key);
      const board = runs.find((run) => run.key === key);
      expect([board?.status, board?.open.map((point) => point.code)], key).toEqual([
        status,
        missing.map((point: { code: string }) => point.code),
      ]);
    }
  });
});
