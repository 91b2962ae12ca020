import { beforeAll, expect, it } from 'vitest';
import type { Person } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import {
  type Floor,
  HOLD,
  LOWER_CLAMP,
  releasedFloor,
  STEP_COUNT,
  type Thing,
  UPPER_TORQUE,
} from '../support/floor.ts';
import { readPage } from '../support/page.ts';
import { besideFields, formThat, typedInto } from './field-form.ts';

const POLES = ['L1', 'L2', 'L3', 'N'];
const ALL_SEEN = POLES.flatMap((pole) => [`${pole} near`, `${pole} far`]);

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });

  const pathOf = ({ id }: Thing) => `/jobs/${floor.projectId}/joints/${id}`;
  const get = async (person: Person, path: string) => (await floor.play.as(person).get(path)).text;
  const post = (person: Person, path: string, body: string) =>
    floor.play.as(person).post(path).type('form').redirects(0).send(body);
  /** Fills in the step that the card shows next. */
  const step = async (person: Person, joint: Thing, typed: Parameters<typeof typedInto>[1] = {}) => {
    const form = formThat('step', await get(person, pathOf(joint)));
    return post(person, form.action, typedInto(form, typed));
  };
  const stepsDone = async (joint: Thing) => (await floor.card('joints', joint.id)).steps.filter(doneOnly).length;
  const doneOnly = ({ done }: { done: unknown }) => done !== null;
  const records = async (joint: Thing) => (await floor.card('joints', joint.id)).history.length;

  it('the next step stands large with its number, and a post leads back to the one after it', async () => {
    const joint = await floor.freshJoint();
    const page = readPage(await get('ines', pathOf(joint)));
    expect(page).toContain(`Step 1 of ${STEP_COUNT} Pieces, lots and conductor sides match`);
    const done = await step('ines', joint);
    expect(done.status).toBe(303);
    expect(done.headers.location).toMatch(new RegExp(`^${pathOf(joint)}\\?done=Step%201`));
    expect(readPage(await get('ines', pathOf(joint)))).toContain(`Step 2 of ${STEP_COUNT} Lower clamp parked`);
  });

  it('a step out of order is refused in place, with what has to come first', async () => {
    const joint = await floor.freshJoint();
    const form = formThat('step', await get('ines', pathOf(joint)));
    const early = await post(
      'ines',
      form.action,
      typedInto(form, { step: '3', words: 'Upper clamp centred on the joint and its bolt drawn up.' }),
    );
    expect(early.status).toBe(409);
    expect(readPage(early.text)).toContain('Step 4 comes too early. Next is step 1');
    expect(await stepsDone(joint)).toBe(0);
  });

  it('the lower clamp cannot be recorded before the seating was seen', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, HOLD);
    const form = formThat('step', await get('ines', pathOf(joint)));
    const words = 'Lower clamp centred over the joint and its bolt drawn up.';
    const early = await post('ines', form.action, typedInto(form, { step: String(LOWER_CLAMP), words, seen: [] }));
    expect(early.status).toBe(409);
    expect(readPage(early.text)).toContain('hides what step 8 has to see');
  });

  it('a pole end that was not seen is named beside the ticks, and the others stay ticked', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, HOLD);
    const refused = await step('ines', joint, { seen: ALL_SEEN.filter((tick) => tick !== 'N far') });
    expect(refused.status).toBe(409);
    expect(besideFields(refused.text)).toContain('7 of 8 seen; missing: N far end');
    expect(refused.text.match(/name="seen" value="[^"]*" checked/g)).toHaveLength(7);
    expect((await step('ines', joint, { seen: ALL_SEEN })).status).toBe(303);
    expect(await stepsDone(joint)).toBe(HOLD + 1);
  });

  it('a torque is asked with value, unit, tool and calibration; what is missing is told beside its field at once', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, UPPER_TORQUE);
    const empty = await step('ines', joint, { value: 'about 20', toolId: '', calibrationDue: '31.11.26' });
    expect(empty.status).toBe(422);
    expect(besideFields(empty.text)).toBe(
      'Write the torque as a figure, such as 24 or 17.7. | Write the number of the torque tool. | Write the last day of its calibration, from its label.',
    );
    expect(empty.text).toContain('value="about 20"');
    const taken = await step('ines', joint, {
      value: '17.7',
      unit: 'lbf-ft',
      toolId: 'T-07',
      calibrationDue: '2026-11-30',
    });
    expect(taken.status).toBe(303);
    expect((await floor.card('joints', joint.id)).history.at(-1).body.torque).toEqual({
      value: 17.7,
      unit: 'lbf-ft',
      toolId: 'T-07',
      calibrationDue: '2026-11-30',
    });
  });

  it('the tool that a person wrote down last is offered to that person again, and to nobody else', async () => {
    const [mine, next] = [await floor.freshJoint(), await floor.freshJoint()];
    await floor.makeJoint(mine.id, UPPER_TORQUE);
    await floor.makeJoint(next.id, UPPER_TORQUE);
    await step('ivan', mine, { value: '24', unit: 'Nm', toolId: 'T-11', calibrationDue: '2026-10-01' });
    const offered = formThat('step', await get('ivan', pathOf(next))).fields;
    expect(offered).toMatchObject({ toolId: 'T-11', calibrationDue: '2026-10-01', unit: 'Nm', value: '' });
    expect(formThat('step', await get('frank', pathOf(next))).fields.toolId).toBe('');
  });

  it('a tool past its calibration is kept as information, and the step stays open', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, UPPER_TORQUE);
    await step('ines', joint, { value: '24', unit: 'Nm', toolId: 'T-07', calibrationDue: '2026-05-09' });
    const page = readPage(await get('ines', pathOf(joint)));
    expect(page).toContain('T-07 was out of calibration');
    expect(page).toContain('3 days over');
    expect(page).toContain(`Step ${UPPER_TORQUE + 1} of ${STEP_COUNT}`);
  });

  it('who did a step is told who may look at the joint, and cannot accept it', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id);
    const page = await get('ines', pathOf(joint));
    expect(readPage(page)).toContain('Frank Dune (foreman), Olive Fenn (office) and Quinn Vale (inspector).');
    expect(page).not.toContain('name="do" value="accept"');
    const forced = await post(
      'ines',
      pathOf(joint),
      new URLSearchParams({ do: 'accept', submissionId: 'forced-by-ines' }).toString(),
    );
    expect(forced.status).toBe(403);
    const form = formThat('accept', await get('quinn', pathOf(joint)));
    expect((await post('quinn', form.action, typedInto(form, {}))).status).toBe(303);
    expect((await floor.card('joints', joint.id)).state).toBe('accepted');
  });

  it('a torque that differs from the sheet is read before the joint is accepted', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, UPPER_TORQUE);
    await step('ines', joint, { value: '26', unit: 'Nm', toolId: 'T-07', calibrationDue: '2026-11-30' });
    for (let index = UPPER_TORQUE + 1; index < STEP_COUNT; index += 1)
      await step(index === STEP_COUNT - 1 ? 'ivan' : 'ines', joint, {
        seen: ALL_SEEN,
        value: '24',
        unit: 'Nm',
        toolId: 'T-07',
        calibrationDue: '2026-11-30',
      });
    const form = formThat('accept', await get('quinn', pathOf(joint)));
    const unread = await post('quinn', form.action, typedInto(form, {}));
    expect(unread.status).toBe(409);
    expect(besideFields(unread.text)).toContain('26.0 N·m');
    expect((await post('quinn', form.action, typedInto(form, { differencesRead: 'yes' }))).status).toBe(303);
  });

  it('reopening needs a reason, sends the joint back to its hold point at least, and the history keeps everything', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id);
    await floor.acceptJoint(joint.id);
    const form = formThat('reopen', await get('frank', pathOf(joint)));
    const silent = await post('frank', form.action, typedInto(form, { reason: '', fromStep: '10' }));
    expect(silent.status).toBe(422);
    expect(besideFields(silent.text)).toBe('Say what is wrong with the joint.');
    const reason = 'Pole N stood proud by 2 mm';
    expect((await post('frank', form.action, typedInto(form, { reason, fromStep: '10' }))).status).toBe(303);
    const page = readPage(await get('ines', pathOf(joint)));
    expect(page).toContain(`Step ${HOLD + 1} of ${STEP_COUNT}, hold point`);
    expect(page).toContain(`reopened from step 11 on; “${reason}”`);
    expect(page).toContain('joint accepted');
  });

  it('a double tap makes one record, and so does the same form sent again after its answer was lost', async () => {
    const joint = await floor.freshJoint();
    const form = formThat('step', await get('ines', pathOf(joint)));
    const body = typedInto(form, {});
    const [first, second] = await Promise.all([post('ines', form.action, body), post('ines', form.action, body)]);
    const again = await post('ines', form.action, `${body}&heldMs=90000`);
    expect([first.status, second.status, again.status]).toEqual([303, 303, 303]);
    expect(await records(joint)).toBe(1);
  });

  it('the same form with something else in it is not taken for the first one', async () => {
    const joint = await floor.freshJoint();
    const form = formThat('step', await get('ines', pathOf(joint)));
    await post('ines', form.action, typedInto(form, {}));
    const other = await post('ines', form.action, typedInto(form, { note: 'now with a note' }));
    expect(other.status).toBe(422);
    expect(await records(joint)).toBe(1);
  });

  it('what the phone kept for lack of signal was done that much earlier, by the server’s clock', async () => {
    const joint = await floor.freshJoint();
    const form = formThat('step', await get('ines', pathOf(joint)));
    floor.play.setClock('2026-05-12T15:00:00.000Z');
    await post('ines', form.action, `${typedInto(form, {})}&heldMs=${25 * 60_000}`);
    const [record] = (await floor.card('joints', joint.id)).history;
    expect(record).toMatchObject({ at: '2026-05-12T14:35:00.000Z', recordedAt: '2026-05-12T15:00:00.000Z' });
  });

  it('a card read before somebody else recorded is refused with what to do, and keeps the note that was typed', async () => {
    const joint = await floor.freshJoint();
    const form = formThat('step', await get('ines', pathOf(joint)));
    await step('ivan', joint);
    const stale = await post('ines', form.action, typedInto(form, { note: 'slot brushed out' }));
    expect(stale.status).toBe(412);
    expect(readPage(stale.text)).toContain('Somebody recorded here since this page was loaded.');
    expect(stale.text).toContain('slot brushed out');
  });

  it('a wrong record is entered anew with the cause, and both stand in the history', async () => {
    const joint = await floor.freshJoint();
    await floor.makeJoint(joint.id, UPPER_TORQUE + 1);
    const card = await get('ines', pathOf(joint));
    const href = /href="([^"]*\?correct=[^"]*)"/.exec(card)?.[1] ?? '';
    const form = formThat('step', await get('ines', href));
    expect(form.fields).toMatchObject({ step: String(UPPER_TORQUE), value: '24', toolId: 'T-03' });
    const typed = { value: '23.5', unit: 'Nm', toolId: 'T-03', calibrationDue: '2026-11-30' };
    const silent = await post('ines', form.action, typedInto(form, { ...typed, cause: '' }));
    expect(besideFields(silent.text)).toContain('Say why the first record is wrong');
    expect((await post('ines', form.action, typedInto(form, { ...typed, cause: 'misread the scale' }))).status).toBe(
      303,
    );
    const page = readPage(await get('ines', pathOf(joint)));
    expect(page).toContain('“misread the scale”');
    expect(page).toContain('replaced by Ines Holt');
    expect(await stepsDone(joint)).toBe(UPPER_TORQUE + 1);
  });

  it('a reader sees the card and no form, an owner is refused, a stranger finds nothing', async () => {
    const joint = await floor.freshJoint();
    expect(await get('rita', pathOf(joint))).not.toContain('class="form keep"');
    const body = new URLSearchParams({ do: 'step', step: '0', words: 'x', submissionId: 'by-the-owner' }).toString();
    expect((await post('owen', pathOf(joint), body)).status).toBe(403);
    expect((await floor.play.as('stan').get(pathOf(joint))).status).toBe(404);
  });

  it('the blank card has the same steps and a box for every pole end', async () => {
    const joint = await floor.freshJoint();
    const page = readPage(await get('rita', `${pathOf(joint)}/blank`));
    expect(page).toContain('Hold point. Seen seated');
    for (const pole of POLES) expect(page).toContain(`${pole} near far`);
    expect(page).toContain('last day of its calibration');
    expect(page).toContain('accepted by another person, signature');
  });
});
