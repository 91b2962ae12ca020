import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { feet } from '../../src/document/demo/feet.ts';
import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf, readPage } from '../support/page.ts';

/** Two runs of the demo's first row turned to face each other, so far apart, with boxes that stand out 1 ft 4 in. */
function facingJob(apart: number): JobDocument {
  const { extras: _extras, ...demo } = demoJob();
  const [north, south] = demo.runs;
  const turned = (run: RunDocument, y: number, conductorSide: 'left' | 'right'): RunDocument => ({
    ...run,
    conductorSide,
    start: { xMm: 0, yMm: y, zMm: 3000 },
  });
  return {
    ...demo,
    project: { ...demo.project, number: 'FACE-1' },
    levels: demo.levels.slice(0, 1),
    buswayTypes: demo.buswayTypes.map((type) => ({
      ...type,
      tap: { ...type.tap, boxDepthMm: feet(4 / 3), faceClearMm: feet(3) },
    })),
    runs: [turned(north!, feet(apart), 'right'), turned(south!, 0, 'left')],
  };
}

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  let keys: readonly string[];
  beforeAll(async () => {
    play = await stage(await open());
    const document = facingJob(2);
    keys = document.runs.map((run) => run.id);
    const made = await play.as('ada').post('/api/v1/job-documents').send(document);
    expect(made.status, JSON.stringify(made.body).slice(0, 500)).toBe(201);
    id = made.body.id;
    await play.joinAll(id);
  });
  afterAll(() => play.app.close());

  const runRow = async (key: string) => {
    const { items } = (await play.as('olive').get(`/api/v1/projects/${id}/runs`)).body;
    return items.find((row: { key: string }) => row.key === key);
  };
  const page = async (key: string) =>
    (await play.as('olive').get(`/jobs/${id}/runs/${(await runRow(key)).id}`)).text.replaceAll('&quot;', '"');
  const release = () => play.as('olive').post(`/api/v1/projects/${id}/releases`).send({ runs: keys });

  it('boxes in the same space are a stop of both runs, on their pages and in the figures', async () => {
    const { checks } = (await play.as('olive').get(`/api/v1/projects/${id}/figures`)).body;
    const faceOffs = checks.filter((check: { rule: string }) => check.rule === 'tap.face-off');
    expect(new Set(faceOffs.map((check: { run: string }) => check.run))).toEqual(new Set(keys));
    for (const { severity } of faceOffs) expect(severity).toBe('stop');
    for (const [own, other] of [keys, [...keys].reverse()]) {
      expect(await page(own!)).toContain(`of run ${other} at 1'-9", which it faces, reach 8" into each other`);
    }
  });

  it('a run is told of them while it is typed, before anything is saved', async () => {
    const row = await runRow(keys[0]!);
    const address = `/jobs/${id}/runs/${row.id}`;
    const fields = fieldsOf((await play.as('olive').get(`${address}/edit`)).text);
    const drawn = async (change: Readonly<Record<string, string>>) => {
      const asked = play.as('olive').post(`${address}/drawing`).set('HX-Request', 'true').type('form');
      return readPage((await asked.send({ ...fields, ...change })).text);
    };
    expect(await drawn({})).toContain('which it faces, reach 8" into each other');
    expect(await drawn({ 'start.yMm': '1 ft' })).toContain(`which it faces, reach 1'-8" into each other`);
    const parted = await drawn({ 'start.yMm': `5'-8"` });
    expect(parted).toContain('As typed; nothing is saved yet.');
    expect(parted).not.toContain('which it faces');
  });

  it('copies that would face a run too near show their stops before they are made', async () => {
    // Both runs again 30 ft further north stand as near to each other as these do: 20 tap-offs each in the other's space.
    const body = { runs: keys, rows: 1, pitch: { xMm: 0, yMm: feet(30) }, step: 20 };
    const shown = await play.as('olive').post(`/api/v1/projects/${id}/run-copies`).send(body);
    expect(shown.status, JSON.stringify(shown.body)).toBe(200);
    expect(shown.body.rows.map(({ stops }: { stops: number }) => stops)).toEqual([20, 20]);
    // The one that faces north again 1 ft further on: 1 ft from the run that faces south.
    const one = { ...body, runs: keys.slice(1), pitch: { xMm: 0, yMm: feet(1) } };
    const near = await play.as('olive').post(`/api/v1/projects/${id}/run-copies`).send(one);
    expect(near.body.rows.map(({ stops }: { stops: number }) => stops)).toEqual([20]);
  });

  it('a change to several runs says which of them come and go', async () => {
    const shown = await play
      .as('olive')
      .post(`/api/v1/projects/${id}/run-changes`)
      .send({ runs: [keys[0]], set: { conductorSide: 'left' } });
    expect(shown.status, JSON.stringify(shown.body)).toBe(200);
    const rules = (list: readonly { rule: string; severity: string }[]) =>
      list.filter(({ rule }) => rule === 'tap.face-off').map(({ severity }) => severity);
    // Turned round, its twenty tap-offs face the open side and are in nobody's space any more; but they begin 2'-0" from the
    // other run's centre line, 8" before its boxes, which want 3'-0".
    expect(rules(shown.body.disappearing)).toEqual(Array.from({ length: 20 }, () => 'stop'));
    expect(rules(shown.body.appearing)).toEqual(Array.from({ length: 20 }, () => 'warning'));
    const [first] = shown.body.appearing.filter(({ rule }: { rule: string }) => rule === 'tap.face-off');
    expect(first.message).toContain(`it leaves 8" of room and 3'-0" is needed`);
  });

  it('neither run is released while its tap-offs have no room', async () => {
    const refused = await release();
    expect([refused.status, refused.body.type]).toEqual([409, '/problems/not-releasable']);
    expect(refused.body.detail).toContain('which it faces, reach 8" into each other');
    const floors = (await play.as('olive').get(`/jobs/${id}/floors`)).text.replaceAll('&quot;', '"');
    expect(floors).toContain('reach 8" into each other');
  });

  it('parting the runs as far as the message says clears the other run as well, and both are released', async () => {
    expect(await page(keys[1]!)).toContain(`Or hang the two runs 3'-8" farther apart.`);
    const row = await runRow(keys[0]!);
    const address = `/api/v1/projects/${id}/runs/${row.id}`;
    const { version, document } = (await play.as('olive').get(address)).body;
    const start = { ...document.start, yMm: feet(2 + 3 + 8 / 12) };
    const moved = await play
      .as('olive')
      .put(address)
      .set('if-match', `"${version}"`)
      .send({ ...document, start });
    expect(moved.status, JSON.stringify(moved.body)).toBe(200);
    for (const key of keys) expect(await page(key)).not.toContain('which it faces');
    expect((await release()).status).toBe(201);
  });
});
