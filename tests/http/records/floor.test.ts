import { beforeAll, expect, it } from 'vitest';
import type { JobDocument, RunDocument } from '../../../src/document/job-document.ts';
import { forEachDatabase } from '../../support/databases.ts';
import {
  CORNER,
  type Floor,
  hung,
  RUN,
  releasedFloor,
  SET,
  stepBody,
  type Thing,
  tapSetBody,
} from '../../support/floor.ts';

const FOOT_MM = 304.8;

/** The spare run F2-R05-A as one that rises 15 ft after 40 and goes on. */
function withRiser(job: JobDocument): JobDocument {
  const rising: Pick<RunDocument, 'legs' | 'taps'> = {
    legs: [
      { lengthMm: 41 * FOOT_MM, turn: 'up' },
      { lengthMm: 17 * FOOT_MM, turn: 'down' },
      { lengthMm: 36 * FOOT_MM, turn: 'none' },
    ],
    taps: [],
  };
  return { ...job, runs: job.runs.map((run) => (run.id === 'F2-R05-A' ? { ...run, ...rising } : run)) };
}

forEachDatabase((open) => {
  let floor: Floor;
  let pieces: Thing[];
  beforeAll(async () => {
    floor = await releasedFloor(await open(), withRiser);
    pieces = await floor.things('sections', RUN);
    return () => floor.close();
  });
  const piece = (index: number) => pieces[index]?.id ?? '';

  it('a straight section seen with its conductors on the wrong side is turned, never recorded as hung', async () => {
    const refused = await floor.send('ines', 'piece', piece(0), hung('right'));
    expect(refused.body).toMatchObject({ status: 409, reason: 'piece.side-turn' });
    expect(refused.body.detail).toMatch(/turn the section end for end/i);
    expect((await floor.card('sections', piece(0))).state).toBe('planned');
  });

  it('an elbow seen from the wrong side is the other kind of elbow: another part', async () => {
    const elbow = (await floor.things('sections', CORNER)).find((row) => row.kind === 'elbow');
    const refused = await floor.send('ines', 'piece', elbow?.id ?? '', hung('right'));
    expect(refused.body).toMatchObject({ status: 409, reason: 'piece.side-reorder' });
    expect(refused.body.detail).toMatch(/outside/);
  });

  it('the second pair of eyes at a piece is another person’s', async () => {
    const refused = await floor.send('ines', 'piece', piece(0), hung('left', { endsConfirmedBy: 'ines holt' }));
    expect(refused.body).toMatchObject({ status: 409, reason: 'piece.confirmed-alone' });
    await floor.take('ines', 'piece', piece(0), { kind: 'piece-on-site', lot: 'L-114' });
    const taken = await floor.take('ines', 'piece', piece(0), hung('left', { endsConfirmedBy: 'Ivan Brook' }));
    expect(taken.stands).toMatchObject({ state: 'hung', mark: `${RUN}-P01` });
    expect(await floor.card('sections', piece(0))).toMatchObject({ lot: 'L-114', hung: { by: { name: 'Ines Holt' } } });
  });

  it('a quarantined piece cannot be hung until the office and an inspector have both signed', async () => {
    const id = piece(1);
    await floor.take('frank', 'piece', id, { kind: 'piece-quarantined', reason: 'wet crate' });
    const refused = await floor.send('ines', 'piece', id, hung('left'));
    expect(refused.body).toMatchObject({ status: 409, reason: 'piece.quarantined' });
    expect(refused.body.detail).toContain('wet crate');
    const release = { kind: 'piece-released', reason: 'dried and tested' } as const;
    expect((await floor.send('ines', 'piece', id, { ...release, as: 'inspector' })).status).toBe(403);
    const first = await floor.take('quinn', 'piece', id, { ...release, as: 'inspector' });
    expect(first.remarks[0].code).toBe('piece.release-awaits');
    expect((await floor.card('sections', id)).state).toBe('quarantined');
    expect((await floor.send('quinn', 'piece', id, { ...release, as: 'office' })).status).toBe(403);
    await floor.take('olive', 'piece', id, { ...release, as: 'office' });
    await floor.take('ines', 'piece', id, hung('left'));
    expect((await floor.card('sections', id)).state).toBe('hung');
  });

  it('a quarantine is not taken back by withdrawing the words', async () => {
    const id = piece(3);
    const said = await floor.take('ivan', 'piece', id, { kind: 'piece-quarantined', reason: 'bent flange' });
    const withdrawn = await floor.send(
      'ivan',
      'piece',
      id,
      { kind: 'record-withdrawn' },
      {
        supersedes: { id: said.record.id, cause: 'looked fine after all' },
      },
    );
    expect(withdrawn.body).toMatchObject({ status: 409, reason: 'record.cannot-withdraw' });
  });

  it('a piece whose joint was worked on is not taken down by withdrawing that it hangs', async () => {
    const [joint] = await floor.things('joints', RUN);
    await floor.take('ines', 'joint', joint?.id ?? '', stepBody(0));
    const { hung: up } = await floor.card('sections', piece(0));
    const refused = await floor.send(
      'ines',
      'piece',
      piece(0),
      { kind: 'record-withdrawn' },
      {
        supersedes: { id: up.recordId, cause: 'wrong piece' },
      },
    );
    expect(refused.body).toMatchObject({ status: 409, reason: 'piece.joints-begun' });
    expect(refused.body.detail).toContain(joint?.mark);
  });

  it('a hanger set where the sheet says is set; one set without its lock nut is not', async () => {
    const [first] = await floor.things('supports', RUN);
    const loose = await floor.send('ines', 'support', first?.id ?? '', { ...SET, lockNut: false });
    expect(loose.body).toMatchObject({ status: 409, reason: 'support.not-ready' });
    expect(loose.body.detail).toContain('lock nut');
    await floor.take('ines', 'support', first?.id ?? '', SET);
    expect(await floor.card('supports', first?.id ?? '')).toMatchObject({ state: 'set', measuredMm: null });
  });

  it('every hanger may be set where the layout puts it: round a corner, at a tee, on a branch, on both sides of a riser', async () => {
    const { items } = (await floor.play.as('ines').get(`${floor.job}/supports?limit=500`)).body;
    expect(items.length).toBeGreaterThan(60);
    const cards = await Promise.all(
      items.map(async ({ id }: Thing) => (await floor.play.as('ines').get(`${floor.job}/supports/${id}`)).body),
    );
    const barred = cards.flatMap(({ mark, state, acts, windows, atMm }) => {
      const set = acts.find((act: { kind: string }) => act.kind === 'support-set');
      const inWindow = windows.some((one: { fromMm: number; toMm: number }) => one.fromMm <= atMm && atMm <= one.toMm);
      return state === 'planned' && (set.bar !== null || !inWindow) ? [`${mark}: ${set.bar?.number} ${atMm}`] : [];
    });
    expect(barred).toEqual([]);
    const [low, high] = await Promise.all([floor.things('supports', 'F2-R05-A'), floor.things('sections', 'F2-R05-A')]);
    expect(high.filter((row) => row.kind === 'elbow')).toHaveLength(2);
    expect(low.filter((row) => row.atMm > 41 * FOOT_MM && row.atMm < 57 * FOOT_MM)).toEqual([]);
  });

  it('a hanger measured 4 in from a joint is refused with the nearest legal place, and its card gives the window', async () => {
    const supports = await floor.things('supports', RUN);
    const [, joint] = await floor.things('joints', RUN);
    const at = joint?.atMm ?? 0;
    const near = [...supports].sort((a, b) => Math.abs(a.atMm - at) - Math.abs(b.atMm - at))[0];
    const card = await floor.card('supports', near?.id ?? '');
    const wrong = at + 101.6;
    const refused = await floor.send('ines', 'support', near?.id ?? '', { ...SET, measuredMm: wrong });
    expect(refused.body).toMatchObject({ status: 409, reason: 'support.position' });
    expect(refused.body.detail).toContain('4"');
    for (const { fromMm, toMm } of card.windows) expect(wrong < fromMm || toMm < wrong).toBe(true);
    const legal = card.windows[0].toMm;
    expect(Math.abs(legal - at)).toBeGreaterThanOrEqual(FOOT_MM);
    const taken = await floor.take('ines', 'support', near?.id ?? '', { ...SET, measuredMm: legal });
    expect(taken.stands.state).toBe('set');
    expect(await floor.card('supports', near?.id ?? '')).toMatchObject({ measuredMm: legal });
  });

  it('a hanger is accepted by somebody else than who set it', async () => {
    const [third] = await floor.things('supports', CORNER);
    await floor.take('frank', 'support', third?.id ?? '', SET);
    const own = await floor.send('frank', 'support', third?.id ?? '', { kind: 'support-accepted' });
    expect(own.body).toMatchObject({ status: 409, reason: 'support.own-work' });
    await floor.take('quinn', 'support', third?.id ?? '', { kind: 'support-accepted' });
    expect((await floor.card('supports', third?.id ?? '')).state).toBe('accepted');
  });

  it('a tap-off is set only on a run that was isolated and proved, device off and locked, phases as planned', async () => {
    const [tap] = await floor.things('taps', RUN);
    const id = tap?.id ?? '';
    const now = floor.play.context.clock().toISOString();
    const good = tapSetBody('L1', now);
    const why = async (body: Parameters<typeof floor.send>[3]) =>
      (await floor.send('ines', 'tap', id, body)).body.reason;
    const unproved = { ...good, isolation: { ...good.isolation, absenceOfVoltageProved: false } };
    expect(await why(unproved)).toBe('tap.not-isolated');
    expect(await why({ ...good, device: { off: true, locked: false } })).toBe('tap.device-not-locked');
    expect(await why({ ...good, phasesFound: 'L2' })).toBe('tap.phases-differ');
    expect(await why({ kind: 'tap-checked' })).toBeUndefined(); // an installer checks nothing
    await floor.take('ines', 'tap', id, { kind: 'tap-on-site' });
    expect((await floor.take('ines', 'tap', id, good)).stands.state).toBe('set');
  });

  it('a tap-off is checked once its drop is supported within 6 ft, and not by who set it', async () => {
    const [tap] = await floor.things('taps', RUN);
    const id = tap?.id ?? '';
    const early = await floor.send('quinn', 'tap', id, { kind: 'tap-checked' });
    expect(early.body).toMatchObject({ status: 409, reason: 'tap.drop-unsupported' });
    const far = await floor.send('ines', 'tap', id, { kind: 'drop-supported', distanceMm: 6.1 * FOOT_MM });
    expect(far.body).toMatchObject({ status: 409, reason: 'tap.drop-too-far' });
    expect(far.body.detail).toContain('NEC 368.56(B)');
    await floor.take('ines', 'tap', id, { kind: 'drop-supported', distanceMm: 6 * FOOT_MM });
    const checked = await floor.take('quinn', 'tap', id, { kind: 'tap-checked' });
    expect(checked.stands).toMatchObject({ mark: `${RUN} T01`, state: 'checked' });
  });

  it('a tap-off is not set on a section that does not hang yet', async () => {
    const taps = await floor.things('taps', CORNER);
    const now = floor.play.context.clock().toISOString();
    const refused = await floor.send('ines', 'tap', taps[0]?.id ?? '', tapSetBody('L1', now));
    expect(refused.body).toMatchObject({ status: 409, reason: 'tap.piece-not-hung' });
  });

  it('an end is closed once its piece hangs, with cap and screw, and once', async () => {
    const id = await floor.runId(RUN);
    const close = { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true } as const;
    const reason = async (body: Parameters<typeof floor.send>[3]) =>
      (await floor.send('ines', 'run', id, body)).body.reason;
    expect(await reason(close)).toBe('end.piece-not-hung');
    expect(await reason({ ...close, end: 'near' })).toBe('end.not-open');
    const other = await floor.runId('F2-R01-A');
    await floor.hangAll('F2-R01-A');
    expect((await floor.send('ines', 'run', other, { ...close, screwSet: false })).body.reason).toBe('end.not-ready');
    await floor.take('ines', 'run', other, close);
    expect((await floor.send('ivan', 'run', other, close)).body.reason).toBe('end.already-closed');
  });

  it('more labels than the run has are refused with the count', async () => {
    const id = await floor.runId(RUN);
    const done = { kind: 'activity-done', activity: 'label' } as const;
    await floor.take('ines', 'run', id, { ...done, quantity: 20 });
    const refused = await floor.send('ines', 'run', id, { ...done, quantity: 5 });
    // 20 tap-offs and 4 joints are labelled on a standard run
    expect(refused.body).toMatchObject({ status: 409, reason: 'activity.over-counted' });
    expect(refused.body.detail).toMatch(/20.*24|24.*20/);
    await floor.take('ines', 'run', id, { ...done, quantity: 4 });
  });
});
