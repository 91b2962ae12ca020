import { beforeAll, expect, it } from 'vitest';
import { campusJob } from '../../src/document/demo/campus.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

/** SQLite's adapter takes 999 values in one question, PostgreSQL's 32 767: a list names more runs than the first. */
const RUNS = 2_400;

const label = (i: number) => `L${String(i + 1).padStart(4, '0')}`;
const each = (row: (i: number) => string) => Array.from({ length: RUNS }, (_, i) => row(i));
const runList = [
  'run\tlevel\ttype\tside\tpaired run\tconductor side\tleg lengths\tturns',
  ...each((i) => {
    const side = i % 2 === 0 ? ['A', label(i + 1), 'left'] : ['B', label(i - 1), 'right'];
    return [label(i), 'B1-F1', 'demo-250A-3PN', ...side, '30 ft', ''].join('\t');
  }),
].join('\n');
const tapList = [
  'run\ttap\tat\tphases\tdevice\tload VA',
  ...each((i) => `${label(i)}\tT01\t7.5 ft\tL1\t30\t2400`),
].join('\n');

forEachDatabase((open) => {
  let play: Stage;
  let job: string;
  beforeAll(async () => {
    play = await stage(await open());
    const made = await play
      .as('ada')
      .post('/api/v1/job-documents')
      .send(campusJob({ runs: 24, seed: 1 }));
    job = `/api/v1/projects/${made.body.id}`;
    await play.joinAll(made.body.id);
    return () => play.app.close();
  });

  it('a list of several thousand paired runs is taken, then one of a tap-off on each, that is undone, and each is named for a release', async () => {
    const post = (path: string, body: object) => play.as('olive').post(`${job}/${path}`).send(body);
    const runs = await post('run-lists', { text: runList, commit: true });
    expect([runs.status, runs.body.made]).toEqual([201, RUNS]);
    const taps = await post('tap-lists', { text: tapList, commit: true });
    expect([taps.status, taps.body.made]).toEqual([201, RUNS]);
    const [last] = (await play.as('olive').get(`${job}/design-steps`)).body.items;
    expect(last.touches).toHaveLength(RUNS);
    const undone = await post(`design-steps/${last.id}/undo`, {});
    expect(undone.status).toBe(201);
    const { runs: left } = (await play.as('olive').get(`${job}/document`)).body;
    expect(left).toHaveLength(RUNS + 24);
    expect(left.slice(24).map(({ id }: { id: string }) => id)).toEqual(each(label));
    expect(left.slice(24).every(({ taps }: { taps?: unknown[] }) => (taps ?? []).length === 0)).toBe(true);
    // A list states no rods, so that each of them waits for limits that nobody has given.
    const released = await post('releases', { runs: each(label) });
    expect([released.status, released.body.title]).toEqual([409, 'Not ready for the floor']);
    for (const key of [label(0), label(999), label(RUNS - 1)]) expect(released.body.detail).toContain(`${key}: `);
  });

  it('their floor opens on the phone, its last page too, and so does its plan', async () => {
    const level = await play.context.database.db.level.findFirstOrThrow({ where: { key: 'B1-F1' } });
    const floor = `/jobs/${job.split('/').at(-1)}/floors/${level.id}`;
    const first = await play.as('frank').get(floor);
    expect([first.status, first.text.match(/class="floor-run"/g)?.length]).toEqual([200, 40]);
    const last = await play.as('frank').get(`${floor}?page=${Math.ceil((RUNS + 24) / 40)}`);
    expect(last.status).toBe(200);
    expect(last.text).toContain(label(RUNS - 1));
    expect(last.text).not.toContain(label(0));
    const plan = await play.as('frank').get(`${floor}/plan`);
    expect(plan.status).toBe(200);
  });
});
