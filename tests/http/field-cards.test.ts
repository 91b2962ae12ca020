import { beforeAll, expect, it } from 'vitest';
import type { Person } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { CORNER, type Floor, hung, RUN, releasedFloor, type Thing } from '../support/floor.ts';
import { readPage } from '../support/page.ts';
import { besideFields, formThat, typedInto } from './field-form.ts';

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });

  const at = (noun: string, { id }: Pick<Thing, 'id'>) => `/jobs/${floor.projectId}/${noun}/${id}`;
  const get = async (person: Person, path: string) => (await floor.play.as(person).get(path)).text;
  const post = (person: Person, path: string, body: string) =>
    floor.play.as(person).post(path).type('form').redirects(0).send(body);
  const send = async (person: Person, path: string, does: string, typed: Parameters<typeof typedInto>[1]) => {
    const form = formThat(does, await get(person, path));
    return post(person, form.action, typedInto(form, typed));
  };
  const first = async (
    noun: Parameters<Floor['things']>[0],
    run: string,
    which: (thing: Thing) => boolean = () => true,
  ) => {
    const found = (await floor.things(noun, run)).find(which);
    if (found === undefined) throw new Error(`no such thing on ${run}`);
    return found;
  };

  it('a piece is hung by saying which way its tap-offs face, and nothing is said for the person', async () => {
    const piece = await first('sections', RUN);
    const page = await get('ines', at('pieces', piece));
    expect(readPage(page)).toContain('NORTH, left of the way from the feed');
    expect(readPage(page)).toContain('SOUTH, right of the way from the feed');
    expect(page).not.toMatch(/name="side"[^>]*checked/);
    const silent = await send('ines', at('pieces', piece), 'hang', {});
    expect(silent.status).toBe(422);
    expect(besideFields(silent.text)).toContain('Look at both ends of the piece');
    const done = await send('ines', at('pieces', piece), 'hang', { side: 'left', second: 'Ivan Brook' });
    expect(done.status).toBe(303);
    expect((await floor.card('sections', piece.id)).state).toBe('hung');
  });

  it('a section the wrong way round is turned; an elbow of the other kind stops the work', async () => {
    const section = await first('sections', CORNER, ({ kind }) => kind !== 'elbow');
    const turned = await send('ines', at('pieces', section), 'hang', { side: 'right' });
    expect(turned.status).toBe(409);
    expect(besideFields(turned.text)).toContain('Turn the section end for end, never slot up');
    const elbow = await first('sections', CORNER, ({ kind }) => kind === 'elbow');
    const stopped = await send('ines', at('pieces', elbow), 'hang', { side: 'right' });
    expect(readPage(stopped.text)).toContain('Stop:');
    expect(besideFields(stopped.text)).toContain('Turning it end for end does not help');
    expect(readPage(await get('ines', at('pieces', elbow)))).toContain(
      'Before the bend tap-offs face NORTH , after it WEST',
    );
  });

  it('a piece in quarantine is let go by the office and an inspector, each with a signature of their own', async () => {
    const piece = await first('sections', 'F2-R01-A');
    await send('ines', at('pieces', piece), 'quarantine', { reason: 'wet crate' });
    const held = await get('ines', at('pieces', piece));
    expect(readPage(held)).toContain('“wet crate” Ines Holt');
    expect(held).not.toContain('name="do" value="hang"');
    expect(held).not.toContain('name="do" value="release"');
    await send('quinn', at('pieces', piece), 'release', { reason: 'dried, 2 GΩ' });
    expect(readPage(await get('ines', at('pieces', piece)))).toMatch(/office: still open inspector: Quinn Vale/);
    await send('olive', at('pieces', piece), 'release', { reason: 'written decision 14' });
    expect((await floor.card('sections', piece.id)).state).toBe('planned');
  });

  it('a measured hanger is told at once whether it may stand there, with the gap that broke and the nearest legal place', async () => {
    const support = await first('supports', RUN, ({ mark }) => mark.endsWith('H02'));
    const path = at('hangers', support);
    const ask = async (measured: string) =>
      readPage(await get('ines', `${path}/place?measured=${encodeURIComponent(measured)}`));
    expect(await ask(`11'-0"`)).toContain(`OK at 11'-0"`);
    // H01 stands at 2 ft and the sheet allows 10 ft: 12 ft at most.
    const broken = await ask('12.5 ft');
    expect(broken).toContain(`Not at 12'-6"`);
    expect(broken).toContain(`at most 10'-0"`);
    expect(broken).toContain(`12'-0"`);
    expect(await ask('12 6')).toContain('Did you mean');
    const refused = await send('ines', path, 'set', {
      measured: '12.5 ft',
      rodPlumb: 'yes',
      loadNut: 'yes',
      lockNut: 'yes',
    });
    expect(refused.status).toBe(409);
    expect(besideFields(refused.text)).toContain(`at most 10'-0"`);
    expect(refused.text).toContain('value="12.5 ft"');
    expect((await floor.card('supports', support.id)).state).toBe('planned');
  });

  it('a hanger that is set leads on to the next one', async () => {
    const supports = await floor.things('supports', 'F2-R05-A');
    const [one, two] = supports;
    if (one === undefined || two === undefined) throw new Error('the run has no hangers');
    const ready = { rodPlumb: 'yes', loadNut: 'yes', lockNut: 'yes' };
    const done = await send('ines', at('hangers', one), 'set', ready);
    expect(done.headers.location).toMatch(new RegExp(`^${at('hangers', two)}\\?done=`));
    expect(readPage(await get('ines', at('hangers', one)))).toContain('You set it, so another person accepts it.');
    expect((await send('frank', at('hangers', one), 'accept', {})).status).toBe(303);
  });

  it('a tap-off is set only isolated and proved, off and locked, on its own phases, by the steps of its sheet', async () => {
    await floor.hangAll('F2-R02-A');
    const tap = await first('taps', 'F2-R02-A');
    const path = at('tap-offs', tap);
    expect(await get('ines', path)).not.toMatch(/type="checkbox"[^>]*checked/);
    const ready = {
      runIsolated: 'yes',
      absenceProved: 'yes',
      provedBy: 'Quinn Vale',
      provedAt: '2026-05-12T07:30',
      deviceOff: 'yes',
      deviceLocked: 'yes',
      phases: 'L1',
      steps: ['Head in the slot'],
      moreSteps: 'Green mark showing',
    };
    const live = await send('ines', path, 'set', { ...ready, absenceProved: undefined });
    expect(live.status).toBe(409);
    expect(besideFields(live.text)).toContain('Stop. A qualified person isolates, locks and proves');
    const open = await send('ines', path, 'set', { ...ready, deviceLocked: undefined });
    expect(besideFields(open.text)).toContain('Not confirmed: locked');
    const wrong = await send('ines', path, 'set', { ...ready, phases: 'L2' });
    expect(besideFields(wrong.text)).toContain('Planned L1, in your hand L2');
    const none = await send('ines', path, 'set', { ...ready, steps: [], moreSteps: '' });
    expect(besideFields(none.text)).toContain('steps of the maker');
    const later = await send('ines', path, 'set', { ...ready, provedAt: '2026-05-12T09:30' });
    expect(besideFields(later.text)).toContain('the work was done before it was proved');
    expect((await send('ines', path, 'set', ready)).status).toBe(303);
    expect((await floor.card('taps', tap.id)).history.at(-1).body).toMatchObject({
      isolation: { provedAt: '2026-05-12T12:30:00.000Z' },
      steps: ['Head in the slot', 'Green mark showing'],
    });
  });

  it('the steps that somebody wrote down for a tap-off, and the isolation of the shift, are offered for the next one', async () => {
    const [, next] = await floor.things('taps', 'F2-R02-A');
    const page = await get('ines', at('tap-offs', next ?? { id: '' }));
    expect(readPage(page)).toContain('Green mark showing');
    expect(formThat('set', page).fields).toMatchObject({ provedBy: 'Quinn Vale', provedAt: '2026-05-12T07:30' });
  });

  it('a drop is supported within the distance that the code prints, then another person checks the tap-off', async () => {
    const tap = await first('taps', 'F2-R02-A');
    const path = at('tap-offs', tap);
    expect(readPage(await get('ines', path))).toContain(`At most 6'-0" by NEC 368.56(B); the local code decides.`);
    const far = await send('ines', path, 'drop', { distance: '7 ft' });
    expect(besideFields(far.text)).toContain(`NEC 368.56(B) asks 6'-0" at most`);
    expect((await send('ines', path, 'drop', { distance: '5 ft' })).status).toBe(303);
    expect(await get('ines', path)).not.toContain('name="do" value="check"');
    expect((await send('frank', path, 'check', {})).status).toBe(303);
    expect((await floor.card('taps', tap.id)).state).toBe('checked');
  });

  it('an end is closed with cap and screw, the slot after it, and an opening says that tests count no longer', async () => {
    const id = await floor.runId('F2-R02-A');
    const path = `/jobs/${floor.projectId}/runs/${id}/ends`;
    const loose = await send('ines', path, 'close-end', { capFitted: 'yes' });
    expect(besideFields(loose.text)).toContain('Missing: screw set');
    expect((await send('ines', path, 'close-end', { capFitted: 'yes', screwSet: 'yes' })).status).toBe(303);
    expect((await send('ines', path, 'close-slot', {})).status).toBe(303);
    const page = readPage(await get('quinn', path));
    expect(page).toContain('Tests of everything connected to this run count no longer.');
    expect((await send('quinn', path, 'open-end', { reason: 'cap cracked' })).status).toBe(303);
    expect(readPage(await get('quinn', path))).toContain('far end opened: “cap cracked”');
  });

  it('counted work is reported, and more than the run has is refused', async () => {
    const id = await floor.runId('F2-R02-A');
    const path = `/jobs/${floor.projectId}/runs/${id}/ends`;
    const labels = formThat('activity', await get('ines', path));
    const many = await post('ines', labels.action, typedInto(labels, { activity: 'label', quantity: '9000' }));
    expect(besideFields(many.text)).toMatch(/0 reported before and 9000 now, of \d+/);
    expect((await post('ines', labels.action, typedInto(labels, { activity: 'label', quantity: '4' }))).status).toBe(
      303,
    );
    expect(readPage(await get('ines', path))).toMatch(/labels: 4 of \d+/);
  });

  it('what left the design keeps its card and its records, and nothing more is recorded on it', async () => {
    const tap = (await floor.things('taps', RUN)).at(-1);
    const path = at('tap-offs', tap ?? { id: '' });
    await floor.take('ines', 'tap', tap?.id ?? '', { kind: 'tap-on-site', lot: 'carton 2' });
    const retiredAt = floor.play.context.clock();
    await floor.play.context.database.db.tap.update({ where: { id: tap?.id ?? '' }, data: { retiredAt } });
    const page = await get('ines', path);
    expect(readPage(page)).toContain('The office took this out of the run in a later revision.');
    expect(readPage(page)).toContain('on site, lot carton 2');
    expect(page).not.toContain('class="form keep"');
  });

  it('no card says that anything may be energised, and those of tap-offs and tests carry the cautions', async () => {
    const tap = await first('taps', RUN);
    const run = `/jobs/${floor.projectId}/runs/${await floor.runId(RUN)}`;
    await floor.take(
      'ines',
      'piece',
      (await first('sections', RUN, ({ mark }) => mark.endsWith('P02'))).id,
      hung('left'),
    );
    for (const path of [
      at('tap-offs', tap),
      `${run}/insulation`,
      `${run}/ends`,
      at('joints', await first('joints', RUN)),
    ]) {
      const page = readPage(await get('frank', path));
      expect(page).toContain(
        'A qualified person does the work; local rules, the authority having jurisdiction and the maker’s sheet decide.',
      );
      expect(page).not.toMatch(/may be energi[sz]ed|safe to (?:touch|energi[sz]e|work)|can be energi[sz]ed/i);
    }
  });
});
