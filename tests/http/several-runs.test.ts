import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { RunDocument } from '../../src/document/job-document.ts';
import { type Person, type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

const PITCH = { xMm: 0, yMm: 60_000 };

forEachDatabase((open) => {
  let play: Stage;
  let jobId: string;
  beforeAll(async () => {
    play = await stage(await open());
    jobId = (await play.as('ada').post('/api/v1/job-documents').send(demoJob())).body.id;
    await play.joinAll(jobId);
    return () => play.app.close();
  });
  const api = (rest: string, of = jobId) => `/api/v1/projects/${of}${rest}`;
  const ask = (what: 'run-copies' | 'run-partners' | 'run-changes', body: object, person: Person = 'olive') =>
    play
      .as(person)
      .post(api(`/${what}`))
      .send(body);
  const design = async (of = jobId): Promise<RunDocument[]> =>
    (await play.as('ada').get(api('/document', of))).body.runs;
  const runOf = async (key: string) => {
    const { items } = (await play.as('olive').get(api(`/runs?q=${key}&limit=50`))).body;
    return items.find((row: { key: string }) => row.key === key);
  };
  const faults = (answer: { body: { errors?: { path: string; message: string; remedy: string }[] } }) =>
    (answer.body.errors ?? []).map(({ path, message, remedy }) => `${path}: ${message} ${remedy}`);
  const newJob = async (number: string, change: (runs: RunDocument[]) => RunDocument[]) => {
    const demo = demoJob();
    const document = { ...demo, project: { ...demo.project, number }, runs: change(demo.runs) };
    const made = await play.as('ada').post('/api/v1/job-documents').send(document);
    expect(made.status).toBe(201);
    return made.body.id as string;
  };

  it('a pair is copied to further rows with names, partners, supplies and cabinets counted on, and only once', async () => {
    const asked = { runs: ['F1-R01-A', 'F1-R01-B'], rows: 2, pitch: PITCH, step: 20 };
    const before = (await design()).length;
    const shown = await ask('run-copies', asked);
    expect(shown.status).toBe(200);
    expect(shown.body).toMatchObject({ committed: false, made: ['F1-R21-A', 'F1-R21-B', 'F1-R41-A', 'F1-R41-B'] });
    expect(shown.body.rows[0]).toMatchObject({ from: 'F1-R01-A', level: 'F1', side: 'A', taps: 20, layoutOk: true });
    expect(await design()).toHaveLength(before);
    const { seen } = shown.body;
    const send = () =>
      play
        .as('olive')
        .post(api('/run-copies'))
        .set('idempotency-key', 'copy-1')
        .send({ ...asked, seen, commit: true });
    const [made, again] = [await send(), await send()];
    expect([made.status, again.status]).toEqual([201, 201]);
    expect(again.body).toEqual(made.body);
    const runs = await design();
    expect(runs).toHaveLength(before + 4);
    const [source, copy] = ['F1-R01-A', 'F1-R41-A'].map((id) => runs.find((run) => run.id === id)!);
    expect(copy).toMatchObject({
      level: 'F1',
      pairedRun: 'F1-R41-B',
      start: { ...source!.start, yMm: source!.start!.yMm + 2 * PITCH.yMm },
      feed: source!.feed,
      legs: source!.legs,
    });
    expect(copy!.taps![4]).toEqual({ ...source!.taps![4], serves: 'cabinet F1-R41-C05', pair: 'F1-R41-C05' });
  });

  it('a level is copied to another level: the level stands in every name, and branches hang off the copied parent', async () => {
    const of = await newJob('COPY-FLOOR', (runs) => runs.filter((run) => run.level === 'F1'));
    const runs = (await design(of)).map((run) => run.id);
    const answer = await play
      .as('ada')
      .post(api('/run-copies', of))
      .send({ runs, rows: 0, pitch: { xMm: 0, yMm: 0 }, levels: ['F2', 'F3'], commit: true });
    expect(answer.status).toBe(201);
    const after = await design(of);
    expect(after).toHaveLength(3 * runs.length);
    const parent = after.find((run) => run.id === 'F3-R06-A')!;
    expect(parent.feed.supply).toBe('PDU-F3-A');
    expect(after.find((run) => run.id === 'F3-R06-A-BR')!.feed.fromRun).toBe(parent.id);
    expect(after.filter((run) => run.level === 'F3').map((run) => run.id)).toEqual(
      runs.map((id) => id.replace('F1', 'F3')),
    );
  });

  it('without tap-offs, with a naming and a supply of one’s own', async () => {
    const answer = await ask('run-copies', {
      runs: ['F2-R01-A'],
      rows: 1,
      pitch: PITCH,
      names: 'ROW-{row}/{level}/{side}',
      supply: 'board {level}.{row}',
      taps: false,
      commit: true,
    });
    expect(answer.body.made).toEqual(['ROW-02/F2/A']);
    const made = (await design()).find((run) => run.id === 'ROW-02/F2/A')!;
    expect(made.feed.supply).toBe('board F2.02');
    expect(made.taps).toBeUndefined();
    expect(made.pairedRun).toBeUndefined();
  });

  it.each([
    ['a pitch of 0', { pitch: { xMm: 0, yMm: 0 } }, 'pitch.xMm: With a pitch of 0 each copy would lie in the run'],
    ['no row and no level', { rows: 0 }, 'rows: No further row and no other level'],
    ['a negative count', { rows: -1 }, 'rows: -1 further rows is less than none. Write 1 to 200.'],
    ['ten thousand rows', { rows: 10_000 }, 'rows: 10000 further rows is more than 200.'],
    ['half a row', { rows: 1.5 }, 'rows: 1.5 rows cannot be made.'],
    ['a level that is not there', { levels: ['F9'] }, 'levels: The job has no level F9.'],
    ['the own level', { levels: ['F1'] }, 'levels: F1 is a level that the runs hang on already.'],
    ['a level named twice', { levels: ['F2', 'F2'] }, 'levels: F2 is named twice.'],
    ['names that are taken', { rows: 1, step: 1 }, 'names: The job already has run F1-R02-A'],
    ['one name for all', { rows: 2, names: 'NEW' }, 'names: NEW would be made twice'],
    ['a word that is not filled in', { names: '{floor}-{row}' }, 'names: {floor} is not filled in here.'],
    ['a brace that stands alone', { names: '{level-{row}' }, 'names: A brace in'],
    ['a name of nothing', { names: '' }, 'names: What is made of F1-R01-A would have no name.'],
    ['a name too long', { names: 'x'.repeat(65) }, 'is 65 characters long; a name has 64 at most.'],
    ['a run that is not there', { runs: ['F1-R1-A'] }, 'runs: The job has no run F1-R1-A. Did you mean F1-R01-A?'],
    ['no run at all', { runs: [] }, 'runs: No run is chosen.'],
    [
      'a branch without its parent',
      { runs: ['F1-R06-A-BR'] },
      'runs: F1-R06-A-BR is a branch of F1-R06-A, which is not',
    ],
    [
      'a copy into a run',
      { pitch: { xMm: 0, yMm: 4_800 }, step: 50 },
      'pitch.xMm: F1-R51-A, a copy of F1-R01-A, would lie in F1-R02-A.',
    ],
    [
      'a copy along itself',
      { pitch: { xMm: 3_000, yMm: 0 }, step: 50 },
      'pitch.xMm: F1-R51-A, a copy of F1-R01-A, would lie in',
    ],
    [
      'a copy into a run of another level',
      { rows: 0, levels: ['F2'], names: 'C{run}' },
      'levels: CF1-R01-A, a copy of F1-R01-A, would lie in F2-R01-A.',
    ],
  ])('%s is refused beside its field, and nothing is written', async (_what, change, said) => {
    const before = (await design()).length;
    const asked = { runs: ['F1-R01-A'], rows: 1, pitch: PITCH, ...change };
    for (const commit of [false, true]) {
      const refused = await ask('run-copies', { ...asked, commit });
      expect(refused.status).toBe(422);
      expect(faults(refused).join('\n')).toContain(said);
      expect(refused.body.errors[0].remedy).not.toBe('');
    }
    expect(await design()).toHaveLength(before);
  });

  it('a run gets its partner over the axis of its row: the run that the demo has there, to the letter', async () => {
    const of = await newJob('PARTNERS', (runs) =>
      runs.filter((run) => run.side === 'A' && run.level === 'F2').map(({ pairedRun: _pair, ...run }) => run),
    );
    const runs = (await design(of)).map((run) => run.id);
    const answer = await play
      .as('ada')
      .post(api('/run-partners', of))
      .send({ runs, way: { kind: 'axis', side: 'right', awayMm: 300 }, commit: true });
    expect(answer.status).toBe(201);
    const after = await design(of);
    const demo = new Map(demoJob().runs.map((run) => [run.id, run]));
    for (const id of answer.body.made) {
      const { taps, ...made } = after.find((run) => run.id === id)!;
      const { taps: theirs, ...standard } = demo.get(id)!;
      expect(made).toEqual(standard);
      expect(taps!.map((tap) => [tap.id, tap.pair])).toEqual(theirs!.map((tap) => [tap.id, tap.pair]));
      expect(after.find((run) => run.id === made.pairedRun)!.pairedRun).toBe(id);
    }
  });

  it('a parent and its branch get partners that branch likewise, with labels for equipment that had none', async () => {
    const asked = { runs: ['F1-R06-A'], way: { kind: 'y', atMm: 60_000 } };
    const answer = await ask('run-partners', { ...asked, commit: true });
    expect(answer.body.made).toEqual(['F1-R06-B', 'F1-R06-B-BR']);
    const runs = await design();
    const [parent, branch, own] = ['F1-R06-B', 'F1-R06-B-BR', 'F1-R06-A'].map((id) => runs.find((r) => r.id === id)!);
    expect(branch).toMatchObject({ side: 'B', pairedRun: 'F1-R06-A-BR' });
    expect(branch!.feed).toMatchObject({ fromRun: 'F1-R06-B', branchSide: 'right' });
    expect(parent!.feed.supply).toBe('PDU-F1-B');
    expect(own!.taps![0]!.pair).toBe('F1-R06-A T01');
    expect(parent!.taps!.map((tap) => tap.pair)).toEqual(own!.taps!.map((tap) => tap.pair));
    const again = await ask('run-partners', { ...asked, commit: true });
    expect(faults(again)[0]).toContain('runs: F1-R06-A has a partner already, F1-R06-B.');
  });

  it.each([
    [
      'the axis in the run itself',
      { way: { kind: 'axis', side: 'left', awayMm: 0 } },
      'way.awayMm: At 0 from the axis',
    ],
    [
      'a negative distance',
      { way: { kind: 'axis', side: 'left', awayMm: -3 } },
      'way.awayMm: A distance to the axis is',
    ],
    ['no way aside', { way: { kind: 'beside', xMm: 0, yMm: 0 } }, 'way.xMm: With 0 east and 0 north'],
    ['a line along the run', { way: { kind: 'y', atMm: 0 } }, 'way.atMm: N1-B, the partner of N1-A, would lie in N1-A'],
    [
      'a line into another run',
      { way: { kind: 'y', atMm: 1_000 } },
      'way.atMm: N1-B, the partner of N1-A, would lie in N2',
    ],
    ['no side', { runs: ['N2'] }, 'runs: N2 has no feed side.'],
    ['no letter of the side', { runs: ['N3'] }, 'names: No A stands in N3'],
  ])('%s gives no partner: refused beside its field, and nothing is written', async (_what, change, said) => {
    const of = await newJob(`NO-PARTNER-${_what}`, ([first]) => {
      const { pairedRun: _pair, side: _side, taps: _taps, ...run } = first!;
      const at = (yMm: number) => ({ xMm: 0, yMm, zMm: 3_000 });
      return [
        { ...run, id: 'N1-A', side: 'A', start: at(0) },
        { ...run, id: 'N2', start: at(2_000) },
        { ...run, id: 'N3', side: 'A', start: at(9_000) },
      ];
    });
    const asked = { runs: ['N1-A'], way: { kind: 'y', atMm: 20_000 }, ...change, commit: true };
    const refused = await play.as('ada').post(api('/run-partners', of)).send(asked);
    expect(refused.status).toBe(422);
    expect(faults(refused).join('\n')).toContain(said);
    expect(await design(of)).toHaveLength(3);
  });

  it('many runs are changed together as the preview says, with the findings that come and go', async () => {
    const runs = ['F2-R01-A', 'F2-R01-B', 'F2-R02-A'];
    const set = {
      elevationMm: 2_500,
      rod: '1/2',
      structure: { kind: 'grid', pitchMm: 4_000, offsetMm: 0 },
      faultKA: null,
    };
    const shown = await ask('run-changes', { runs, set });
    expect(shown.status).toBe(200);
    const { differences, appearing, seen } = shown.body;
    expect(differences).toContainEqual({ run: 'F2-R01-B', field: 'rod', from: '3/8', to: '1/2' });
    expect(differences).toContainEqual({ run: 'F2-R02-A', field: 'faultKA', from: 18, to: null });
    expect(appearing.map((one: { rule: string; run: string }) => [one.rule, one.run])).toEqual(
      expect.arrayContaining(runs.map((run) => ['support.blocked', run])),
    );
    expect((await design()).find((run) => run.id === runs[0])!.rod).toBe('3/8');
    const done = await ask('run-changes', { runs, set, seen, commit: true });
    expect(done.body).toMatchObject({ committed: true, changed: runs, released: [] });
    for (const run of (await design()).filter(({ id }) => runs.includes(id))) {
      expect(run).toMatchObject({ rod: '1/2', structure: set.structure, start: { zMm: 2_500 } });
      expect(run.feed.faultKA).toBeUndefined();
      expect(run.feed.xOverR).toBe(4);
    }
    const same = await ask('run-changes', { runs, set });
    expect(same.body).toMatchObject({ changed: [], same: 3, differences: [] });
    const back = await ask('run-changes', { runs, set: { structure: null } });
    expect(back.body.disappearing.map((one: { rule: string }) => one.rule)).toContain('support.blocked');
  });

  it('a run that somebody changed since the preview is named with who and when, and none is changed', async () => {
    const runs = ['F3-R01-A', 'F3-R01-B'];
    const set = { area: 'North hall' };
    const { seen } = (await ask('run-changes', { runs, set })).body;
    const row = await runOf('F3-R01-B');
    const current = (await play.as('ada').get(api(`/runs/${row.id}`))).body.document;
    const changed = await play
      .as('ada')
      .put(api(`/runs/${row.id}`))
      .set('if-match', `"${row.version}"`)
      .send({ ...current, area: 'South hall' });
    expect(changed.status).toBe(200);
    play.setClock('2026-05-12T13:04:30.000Z');
    const refused = await ask('run-changes', { runs, set, seen, commit: true });
    play.setClock('2026-05-12T13:00:00.000Z');
    expect(refused.status).toBe(409);
    expect(refused.body.detail).toContain('Run F3-R01-B changed since this was shown (Ada Marsh, 4 min ago).');
    const areas = (await design()).filter(({ id }) => runs.includes(id)).map(({ area }) => area);
    expect(areas).toEqual(['Hall 3', 'South hall']);
    const blind = await ask('run-changes', { runs, set, commit: true });
    expect(faults(blind)[0]).toContain('seen: A change of many runs is written only as it was shown.');
  });

  it('a released run is changed in the design alone, which the answer says', async () => {
    const released = await play
      .as('olive')
      .post(api('/releases'))
      .send({ runs: ['F4-R01-A'], reason: 'ready' });
    expect(released.status).toBe(201);
    const runs = ['F4-R01-A', 'F4-R01-B'];
    const set = { rod: 'M12' };
    const shown = await ask('run-changes', { runs, set });
    expect(shown.body.released).toEqual(['F4-R01-A']);
    const done = await ask('run-changes', { runs, set, seen: shown.body.seen, commit: true });
    expect(done.body.released).toEqual(['F4-R01-A']);
    expect(await runOf('F4-R01-A')).toMatchObject({ revision: 1, changed: true });
    expect(await runOf('F4-R01-B')).toMatchObject({ revision: 0, changed: false });
  });

  it.each([
    ['no field', {}, 'set: No field is filled in'],
    ['a level that is not there', { level: 'F7' }, 'set.level: The job has no level F7.'],
    [
      'a type that is not there',
      { type: 'demo-250A-3P' },
      'set.type: The job has no busway type demo-250A-3P. Did you mean',
    ],
    ['a rod that is none', { rod: 'M11' }, 'rod'],
  ])('%s is refused beside its field, all or nothing', async (_what, set, said) => {
    const before = await design();
    const refused = await ask('run-changes', { runs: ['F3-R02-A'], set, seen: {}, commit: false });
    expect(refused.status).toBe(422);
    expect(faults(refused).join('\n')).toContain(said);
    expect(await design()).toEqual(before);
  });

  it('copies, partners and changes are each one step that can be taken back whole', async () => {
    const of = await newJob('UNDO', (runs) =>
      runs.filter((run) => run.level === 'F1' && run.side === 'A').map(({ pairedRun: _pair, ...run }) => run),
    );
    const before = await design(of);
    const runs = before.map((run) => run.id);
    const seen = async () => (await send('run-changes', { runs, set: { rod: 'M12' } })).body.seen;
    const send = (what: string, body: object) =>
      play
        .as('ada')
        .post(api(`/${what}`, of))
        .send(body);
    const way = { kind: 'axis', side: 'right', awayMm: 300 };
    for (const [what, bodyOf] of [
      ['run-copies', async () => ({ rows: 1, pitch: PITCH, levels: ['F2'] })],
      ['run-partners', async () => ({ way })],
      ['run-changes', async () => ({ set: { rod: 'M12', structure: null }, seen: await seen() })],
    ] as const) {
      const done = await send(what, { runs, ...(await bodyOf()), commit: true });
      expect([what, done.status < 300]).toEqual([what, true]);
      expect(await design(of)).not.toEqual(before);
      const { items } = (await play.as('ada').get(api('/design-steps', of))).body;
      const undone = await play.as('ada').post(api(`/design-steps/${items[0].id}/undo`, of));
      expect([what, undone.status]).toEqual([what, 201]);
      expect(await design(of)).toEqual(before);
    }
  });

  it('nobody but the office copies, pairs or changes runs', async () => {
    for (const person of ['frank', 'ines', 'rita', 'owen'] as const) {
      expect((await ask('run-copies', { runs: ['F1-R01-A'], rows: 1, pitch: PITCH }, person)).status).toBe(403);
      expect((await ask('run-changes', { runs: ['F1-R01-A'], set: { rod: 'M10' } }, person)).status).toBe(403);
      const way = { kind: 'y', atMm: 1 };
      expect((await ask('run-partners', { runs: ['F1-R01-A'], way }, person)).status).toBe(403);
    }
    expect((await ask('run-copies', { runs: ['F1-R01-A'], rows: 1, pitch: PITCH }, 'stan')).status).toBe(404);
  });

  it('the audit trail says what was made of what, and its chain holds', async () => {
    const { items } = (await play.as('olive').get(api('/audit?limit=100'))).body;
    const actions = items.map((entry: { action: string }) => entry.action);
    expect(actions).toEqual(expect.arrayContaining(['runs copied', 'partners made', 'runs changed together']));
  });
});
