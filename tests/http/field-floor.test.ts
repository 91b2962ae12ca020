import { beforeAll, expect, it } from 'vitest';
import type { Person } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { BRANCH, CORNER, DRAFT, type Floor, hung, RUN, releasedFloor, SET, TEE } from '../support/floor.ts';
import { readPage } from '../support/page.ts';
import { besideFields, formThat, typedInto } from './field-form.ts';

forEachDatabase((open) => {
  let floor: Floor;
  let levels: Map<string, string>;
  beforeAll(async () => {
    floor = await releasedFloor(await open(), (job) => ({
      ...job,
      runs: job.runs.map((run) => (run.id === TEE || run.id === BRANCH ? { ...run, area: 'Plant room' } : run)),
    }));
    const rows = await floor.play.context.database.db.level.findMany({ select: { id: true, key: true } });
    levels = new Map(rows.map(({ id, key }) => [key, id]));
    return () => floor.close();
  });

  const get = async (person: Person, path: string) => (await floor.play.as(person).get(path)).text;
  const floorPath = (key: string) => `/jobs/${floor.projectId}/floors/${levels.get(key)}`;
  const runPath = async (key: string) => `${floorPath(key.slice(0, 2))}/runs/${await floor.runId(key)}`;
  /** What the row of a run says on its floor. */
  const row = async (key: string, query = '') => {
    const page = await get('frank', `${floorPath(key.slice(0, 2))}${query}`);
    const rows = [...page.matchAll(/<li>\s*<a class="floor-run"[\s\S]*?<\/li>/g)].map(([html]) => readPage(html));
    return rows.find((text) => text.startsWith(`${key} `)) ?? '';
  };
  const post = (person: Person, path: string, body: string) =>
    floor.play.as(person).post(path).type('form').redirects(0).send(body);

  it('each run says what is next, first its hangers', async () => {
    expect(await row(RUN)).toContain(`next: set hanger H01 at 2'-0"`);
    expect(await row(RUN)).toContain('hangers 0 of 8 · pieces 0 of 4 · joints 0 of 4 · tap-offs 0 of 20');
  });

  it('with the hangers set, it is the piece with its length and the way that its tap-offs face', async () => {
    for (const support of await floor.things('supports', CORNER)) await floor.take('ines', 'support', support.id, SET);
    expect(await row(CORNER)).toContain(`next: hang P01, section 20'-0", tap-offs face NORTH`);
    const pieces = await floor.things('sections', CORNER);
    for (const piece of pieces.filter(({ toMm }) => toMm < 61 * 304.8 + 400))
      await floor.take('ines', 'piece', piece.id, hung('left'));
    // Round the corner the run heads north with its conductors on the left: taps face west.
    expect(await row(CORNER)).toMatch(/next: hang P\d\d, section .*, tap-offs face WEST/);
  });

  it('a run that the office keeps back says so, and stands among what stops the work', async () => {
    expect(await row(DRAFT)).toBe(`${DRAFT} not released`);
    expect(readPage(await get('frank', floorPath('F1')))).toContain(`The office has not released ${DRAFT}`);
    expect(readPage(await get('frank', await runPath(DRAFT)))).toContain('has not released this run to the floor');
  });

  it('a quarantined piece stops the work, with the reason, who said so and since when', async () => {
    const [piece] = await floor.things('sections', 'F2-R01-A');
    await floor.take('frank', 'piece', piece?.id ?? '', { kind: 'piece-quarantined', reason: 'crushed end' });
    const page = readPage(await get('ines', floorPath('F2')));
    expect(page).toContain(`What stops the work F2-R01-A-P01 in quarantine crushed end Frank Dune, 12 May 2026`);
  });

  it('the floor is narrowed to one room, and counts that room alone', async () => {
    const page = await get('frank', `${floorPath('F1')}?area=Plant+room`);
    const runs = [...page.matchAll(/class="floor-run"[^>]*><strong>([^<]*)/g)].map(([, key]) => key);
    expect(runs).toEqual([TEE, BRANCH]);
    expect(await row(BRANCH, '?area=Plant+room')).not.toBe('');
  });

  it('the part that follows changes is the same element as on the page', async () => {
    const page = await get('frank', floorPath('F1'));
    const href = /<div id="floor" hx-get="([^"]*)"/.exec(page)?.[1]?.replaceAll('&amp;', '&') ?? '';
    const part = await get('frank', href);
    expect(part.startsWith('<div id="floor"')).toBe(true);
    expect(page).toContain(part.slice(0, 400));
  });

  it('a floor of another job is not found', async () => {
    expect((await floor.play.as('stan').get(floorPath('F1'))).status).toBe(404);
    expect((await floor.play.as('frank').get(`/jobs/${floor.projectId}/floors/nowhere`)).status).toBe(404);
  });

  it('several hangers ticked on one walk are one record each, and sent twice they are still one each', async () => {
    const path = await runPath('F2-R03-A');
    const supports = await floor.things('supports', 'F2-R03-A');
    const form = formThat('hangers', await get('ines', path));
    const things = supports.slice(0, 3).map(({ id, version }) => `${id} ${version}`);
    const body = typedInto(form, { things, rodPlumb: 'yes', loadNut: 'yes', lockNut: 'yes' });
    expect((await post('ines', form.action, body)).status).toBe(303);
    expect((await post('ines', form.action, body)).status).toBe(303);
    for (const { id } of supports.slice(0, 3)) {
      const card = await floor.card('supports', id);
      expect(card.state).toBe('set');
      expect(card.history).toHaveLength(1);
    }
    expect((await floor.card('supports', supports[3]?.id ?? '')).state).toBe('planned');
  });

  it('of a walk, what somebody else recorded meanwhile is told with its mark; the others are taken', async () => {
    const path = await runPath('F2-R04-A');
    const supports = await floor.things('supports', 'F2-R04-A');
    const form = formThat('hangers', await get('ines', path));
    await floor.take('ivan', 'support', supports[1]?.id ?? '', SET);
    const things = supports.slice(0, 3).map(({ id, version }) => `${id} ${version}`);
    const answer = await post(
      'ines',
      form.action,
      typedInto(form, { things, rodPlumb: 'yes', loadNut: 'yes', lockNut: 'yes' }),
    );
    expect(answer.status).toBe(412);
    expect(readPage(answer.text)).toContain('2 of 3 recorded. H02: Somebody recorded here since this page was loaded.');
  });

  it('nuts that nobody confirmed set no hanger, and nothing ticked is nothing recorded', async () => {
    const path = await runPath('F2-R05-A');
    const [support] = await floor.things('supports', 'F2-R05-A');
    const form = formThat('hangers', await get('ines', path));
    const things = [`${support?.id} ${support?.version}`];
    const loose = await post('ines', form.action, typedInto(form, { things, rodPlumb: 'yes', loadNut: 'yes' }));
    expect(loose.status).toBe(409);
    expect(besideFields(loose.text)).toContain('Missing: lock nut');
    expect(loose.text).toContain(`value="${things[0]}" checked`);
    const none = await post('ines', form.action, typedInto(form, { things: [] }));
    expect(none.status).toBe(422);
    expect(readPage(none.text)).toContain('Tick what you saw; nothing is ticked yet.');
  });

  it('who set hangers is not offered to accept them, and another person accepts several at once', async () => {
    const path = await runPath('F2-R03-A');
    expect(await get('ines', path)).not.toContain('value="accept-hangers"');
    const form = formThat('accept-hangers', await get('frank', path));
    const supports = (await floor.things('supports', 'F2-R03-A')).filter(({ state }) => state === 'set');
    const things = supports.map(({ id, version }) => `${id} ${version}`);
    expect((await post('frank', form.action, typedInto(form, { things }))).status).toBe(303);
    expect((await floor.card('supports', supports[0]?.id ?? '')).state).toBe('accepted');
  });

  it('pieces and tap-offs come on site together, with their lot', async () => {
    const path = await runPath('F2-R02-A');
    const pieces = await floor.things('sections', 'F2-R02-A');
    const form = formThat('pieces', await get('ines', path));
    const things = pieces.map(({ id, version }) => `${id} ${version}`);
    expect((await post('ines', form.action, typedInto(form, { things, lot: 'crate 3' }))).status).toBe(303);
    for (const { id } of pieces)
      expect(await floor.card('sections', id)).toMatchObject({ state: 'on-site', lot: 'crate 3' });
  });

  it('a person who only reads sees the run and no form', async () => {
    const page = await get('rita', await runPath(RUN));
    expect(page).not.toContain('class="form keep"');
    expect(readPage(page)).toContain('tap-offs face NORTH');
  });
});
