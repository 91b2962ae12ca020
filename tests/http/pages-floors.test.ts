import { beforeAll, expect, it } from 'vitest';
import { forEachDatabase } from '../support/databases.ts';
import {
  BRANCH,
  CORNER,
  DRAFT,
  type Floor,
  floorJob,
  hung,
  RUN,
  releasedFloor,
  SET,
  TEE,
  testBody,
} from '../support/floor.ts';
import { fieldsOf, readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  let path: string;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    path = `/jobs/${floor.projectId}`;
    return () => floor.close();
  });
  const get = async (person: Parameters<Floor['play']['as']>[0], rest: string) =>
    floor.play.as(person).get(`${path}${rest}`);
  /** What the row of a run says. */
  const rowOf = (html: string, key: string) =>
    readPage(new RegExp(`<tr[^>]*>(?:(?!</tr>)[\\s\\S])*?>${key}</a>[\\s\\S]*?</tr>`).exec(html)?.[0] ?? '');

  it('a floor is one tap away, and each run says what is done of what is planned', async () => {
    const page = await get('frank', '/floors');
    expect(page.status).toBe(200);
    expect(page.text).toMatch(/<a[^>]*href="\/jobs\/[^"]+\/floors\/[0-9a-f-]{36}"[^>]*>Floor 1<\/a>/);
    expect(rowOf(page.text, RUN)).toContain(`planned A-side 70'-0" 0 of 4 0 of 4 0 of 8 0 of 20`);
    expect(rowOf(page.text, DRAFT)).toContain('not yet');
  });

  it('what the crew records shows at once, and earns its hours by the rules of credit', async () => {
    const before = rowOf((await get('frank', '/floors')).text, RUN);
    expect(before).toContain('0.0 of');
    const pieces = await floor.things('sections', RUN);
    const supports = await floor.things('supports', RUN);
    await floor.take('ines', 'piece', pieces[0]?.id ?? '', hung('left'));
    for (const support of supports.slice(0, 3)) await floor.take('ines', 'support', support.id, SET);
    const row = rowOf((await get('frank', '/floors')).text, RUN);
    expect(row).toContain('in installation');
    expect(row).toContain('1 of 4 0 of 4 3 of 8 0 of 20');
    // Three of eight hangers at full credit, one of four sections handled whole and hung at 60 %: from the run's own budget lines.
    const csv = (await get('olive', '/hours.csv')).text.split('\r\n').map((line) => line.split(','));
    const heads = csv[0] ?? [];
    const column = (name: string) => heads.findIndex((head) => head.replace('\uFEFF', '') === name);
    const lineOf = (activity: string, lengthMm: string) =>
      csv.find(
        (line) =>
          line[column('run')] === RUN &&
          line[column('activity')] === activity &&
          line[column('length mm')] === lengthMm,
      ) ?? [];
    const each = (activity: string, lengthMm = '') =>
      Number(lineOf(activity, lengthMm)[column('hours')]) /
      Number(lineOf(activity, lengthMm)[column('pieces of work')]);
    const earned = 3 * each('support') + each('handle-section', '6096') + 0.6 * each('section', '6096');
    expect(earned).toBeGreaterThan(1);
    expect(row).toContain(`${earned.toFixed(1)} of`);
  });

  it('only the run with a new record is read again, and the reading is the same as a fresh one', async () => {
    const supports = await floor.things('supports', CORNER);
    const rows = async () => {
      const page = await get('frank', '/floors?part=board');
      return floorJob().runs.map((run) => rowOf(page.text, run.id));
    };
    await rows();
    await floor.take('ines', 'support', supports[0]?.id ?? '', SET);
    const picked = await rows();
    // A new level leaves the records alone and moves the design on, so that the next reading is a full one.
    await floor.play.as('olive').post(`${floor.job}/levels`).send({ id: 'F9', name: 'Roof', order: 90 });
    expect(await rows()).toEqual(picked);
    expect(picked.find((row) => row.startsWith(CORNER))).toContain('0 of 8 1 of 12');
    expect(picked.every((row) => row !== '')).toBe(true);
  });

  it('a run that is built, closed and tested counts as tested, and work on its branch makes the test stale', async () => {
    for (const key of [TEE]) {
      await floor.hangAll(key);
      for (const joint of await floor.things('joints', key)) {
        await floor.makeJoint(joint.id);
        await floor.acceptJoint(joint.id);
      }
      for (const support of await floor.things('supports', key)) await floor.take('ines', 'support', support.id, SET);
    }
    const id = await floor.runId(TEE);
    await floor.take('ines', 'run', id, { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true });
    await floor.take('ines', 'run', id, { kind: 'slot-closed' });
    expect(rowOf((await get('frank', '/floors')).text, TEE)).toContain('mechanically complete');
    expect(rowOf((await get('frank', '/floors')).text, TEE)).toContain('no insulation test');
    floor.play.setClock('2026-05-12T14:00:00.000Z');
    await floor.take('quinn', 'run', id, testBody());
    expect(rowOf((await get('frank', '/floors')).text, TEE)).toMatch(/\btested\b/);
    floor.play.setClock('2026-05-12T15:10:00.000Z');
    const pieces = await floor.things('sections', BRANCH);
    await floor
      .take('ines', 'piece', pieces[0]?.id ?? '', hung('right'))
      .catch(() => floor.take('ines', 'piece', pieces[0]?.id ?? '', hung('left')));
    const row = rowOf((await get('frank', '/floors')).text, TEE);
    expect(row).toContain('mechanically complete');
    expect(row).toContain('stale');
  });

  it('a person without the office’s role sees no release and no edit, and the server refuses both', async () => {
    const page = await get('frank', '/floors');
    expect(page.text).not.toContain('/releases"');
    expect(page.text).not.toContain('/runs/new');
    expect((await floor.play.as('frank').post(`${path}/releases`).type('form').send({})).status).toBe(403);
    expect((await get('frank', '/runs/new')).status).toBe(403);
    expect((await get('stan', '/floors')).status).toBe(404);
  });

  it('the office releases what is ready from the page, once however often it is sent', async () => {
    const page = await get('olive', '/floors');
    const { submissionId = '' } = fieldsOf(page.text.slice(page.text.indexOf('id="release"')));
    expect(readPage(page.text)).toContain('Release 7 runs');
    const send = () => floor.play.as('olive').post(`${path}/releases`).type('form').send({ submissionId });
    const first = await send();
    const second = await send();
    expect([first.status, second.status]).toEqual([303, 303]);
    expect(second.headers.location).toBe(first.headers.location);
    const after = await get('olive', '/floors');
    expect(rowOf(after.text, DRAFT)).toContain('rev. 1');
    expect(readPage(after.text)).toContain('The floor has every run as it is designed');
  });

  it('reading changes nothing: the audit chain is as long afterwards as before', async () => {
    const length = async () => (await floor.play.as('olive').get(`${floor.job}/audit?limit=1`)).body.total;
    const before = await length();
    const run = await floor.runId(RUN);
    const pages = ['', '?floor=F1', '?part=board'].map((query) => `/floors${query}`);
    const others = [
      `/runs/${run}`,
      `/runs/${run}/edit`,
      '/takeoff',
      '/hours',
      '/lists',
      '/members',
      '/settings',
      '/audit',
    ];
    for (const page of [...pages, ...others]) expect((await get('olive', page)).status, page).toBe(200);
    expect(await length()).toBe(before);
  });

  it('the server says how long it took', async () => {
    expect((await get('olive', '/floors')).headers['server-timing']).toMatch(/^app;dur=\d+(\.\d+)?$/);
  });
});
