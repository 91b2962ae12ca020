import { beforeAll, expect, it } from 'vitest';
import type { RunDocument } from '../../src/document/job-document.ts';
import { forEachDatabase } from '../support/databases.ts';
import { type Floor, RUN, releasedFloor } from '../support/floor.ts';
import { readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  let runId: string;
  let first: RunDocument;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    runId = await floor.runId(RUN);
    first = (await api('')).body.document;
    return () => floor.close();
  });
  const api = (rest: string) => floor.play.as('olive').get(`/api/v1/projects/${floor.projectId}/runs/${runId}${rest}`);
  const page = (rest: string, person: 'olive' | 'frank' = 'olive') =>
    floor.play.as(person).get(`/jobs/${floor.projectId}/runs/${runId}${rest}`);
  const put = async (document: RunDocument) => {
    const { version } = (await api('')).body;
    const changed = await floor.play
      .as('olive')
      .put(`/api/v1/projects/${floor.projectId}/runs/${runId}`)
      .set('if-match', `"${version}"`)
      .send(document);
    expect(changed.status, JSON.stringify(changed.body)).toBe(200);
  };

  it('nothing differs while the design is what was released', async () => {
    const { status, body } = await api('/revisions/1/compare/draft');
    expect(status).toBe(200);
    expect(body.pieces).toEqual({ added: [], removed: [], moved: [], replaced: [], same: 4 });
    expect(body.reopens).toMatchObject({ joints: [], insulationTests: [], hours: [], dropCords: [] });
    expect(readPage((await page('/revisions')).text)).toContain('There is nothing to compare yet');
  });

  it('before the button is pressed the page says what a release would do: a tap-off gone, its test void, fewer hours', async () => {
    const [gone, ...taps] = first.taps ?? [];
    await put({ ...first, taps });
    const { body } = await api('/revisions/1/compare/draft');
    expect(body.taps).toMatchObject({ added: [], moved: [], removed: [{ id: gone?.id }] });
    expect(body.reopens.insulationTests).toEqual([RUN]);
    expect(body.reopens.hours.find((line: { activity: string }) => line.activity === 'tap').after).toBeGreaterThan(0);
    // The slot is closed where no tap-off stands, so that closing it takes longer; all other work takes less.
    for (const line of body.reopens.hours.filter((one: { activity: string }) => one.activity !== 'slot-closure'))
      expect(line.after).toBeLessThan(line.before);
    const said = readPage((await page('')).text);
    expect(said).toContain('What releasing this now would do');
    expect(said).toContain('1 tap-off leaves and is retired with its records');
    expect(said).toContain('The insulation test of this run is void once the work is done');
    expect(said).toMatch(/−\d+\.\d\d h likely, with the level’s conditions and before learning/);
    expect(readPage((await page('', 'frank')).text)).not.toContain('What releasing this now would do');
  });

  it('a released shorter run: what release announced is what the rows then are, and any two revisions compare', async () => {
    const leg = first.legs[0]!;
    const shorter = { ...first, legs: [{ ...leg, lengthMm: leg.lengthMm - 3048 }] };
    await put({ ...shorter, taps: (first.taps ?? []).slice(0, 5) });
    const { body: announced } = await api('/revisions/1/compare/draft');
    const before = await floor.things('sections', RUN);
    const released = await floor.play
      .as('olive')
      .post(`/api/v1/projects/${floor.projectId}/releases`)
      .send({ runs: [RUN], reason: 'The last cabinets went.' });
    expect(released.status, JSON.stringify(released.body)).toBe(201);
    const after = await floor.things('sections', RUN);
    const kept = after.filter(({ id }) => before.some((piece) => piece.id === id));
    expect(kept).toHaveLength(announced.pieces.same + announced.pieces.moved.length);
    expect(before.length - kept.length).toBe(announced.pieces.removed.length + announced.pieces.replaced.length);
    expect((await api('/revisions/1/compare/2')).body).toEqual(announced);
    const back = (await api('/revisions/2/compare/1')).body;
    expect(back.pieces.added).toEqual(announced.pieces.removed);

    const shown = await page('/revisions');
    const said = readPage(shown.text);
    expect(said).toContain('Revision 2: The last cabinets went.');
    expect(shown.text).toContain('id="before-F1-R01-A-title"');
    expect(shown.text).toContain('id="after-F1-R01-A-title"');
    expect(shown.text).toMatch(/−P0\d/);
    expect(readPage((await page('/revisions?a=2&b=1', 'frank')).text)).toContain('Revision 1');
  });

  it('a revision that was never released is not found, and a word that names none is refused', async () => {
    expect((await api('/revisions/1/compare/9')).status).toBe(404);
    expect((await api('/revisions/1/compare/last')).status).toBe(422);
  });

  // 45 ft are laid 20/20/5. The 5 ft section is new, and no mark is given twice: not P03, though it is the third piece.
  it('the order list knows the marks that the floor has, also where they are no longer counted from the feed', async () => {
    const { end: _end, ...plain } = first;
    await put({ ...plain, legs: [{ ...first.legs[0]!, lengthMm: 13_716 }], taps: (first.taps ?? []).slice(0, 2) });
    const places = async () => {
      const address = `/jobs/${floor.projectId}/takeoff/places?item=section&kind=stock&length=121920`;
      return readPage((await floor.play.as('rita').get(`${address}&type=demo-250A-3PN&run=${RUN}`)).text);
    };
    expect(await places()).toContain(`${RUN} P03 40'-0"`); // a draft is numbered from the feed
    await floor.play
      .as('olive')
      .post(`/api/v1/projects/${floor.projectId}/releases`)
      .send({ runs: [RUN] });
    const [, , last] = await floor.things('sections', RUN);
    const mark = last?.mark.slice(RUN.length + 1) ?? '';
    expect(mark).not.toBe('P03');
    expect(await places()).toContain(`${RUN} ${mark} 40'-0"`);
  });
});
