import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decideJoint, type Neighbour } from '../../../src/domain/quality/decide-joint.ts';
import { firstPassYield } from '../../../src/domain/quality/first-pass.ts';
import { type JointCard, jointCard } from '../../../src/domain/quality/joint-card.ts';
import { jointSheet } from '../../../src/domain/quality/joint-sheet.ts';
import type { Actor, JointBody, NewRecord, SiteRecord } from '../../../src/domain/quality/record.ts';
import {
  ALL_POLES,
  asked,
  clock,
  DEMO_STEPS,
  DEMO_TYPE,
  GOOD_TORQUE,
  IBE,
  kept,
  LUND,
  OKAFOR,
  RULES,
  stepBody,
  WEISS,
} from './cast.ts';

const SHEET = jointSheet(DEMO_TYPE);
const HUNG: readonly Neighbour[] = [
  { mark: 'L2-R03-A-P04', state: 'hung', quarantineReason: null },
  { mark: 'L2-R03-A-P05', state: 'hung', quarantineReason: null },
];
const HOLD = 4;

const cardOf = (records: readonly SiteRecord[], sheet = SHEET) => jointCard(sheet, records, RULES.timeZone);

const stepAt = (step: number) => clock(`08:${String(10 + step).padStart(2, '0')}`);

/** Steps 0 to `last`, done as they should be; the check by the inspector. */
const stepsTo = (last: number, by: Actor = IBE): SiteRecord[] =>
  Array.from({ length: last + 1 }, (_, step) =>
    kept(asked('joint', stepAt(step), stepBody(step)), step === 7 ? OKAFOR : by),
  );

const decide = (
  records: readonly SiteRecord[],
  record: NewRecord<JointBody>,
  actor: Actor = IBE,
  more: { neighbours?: readonly Neighbour[]; sheet?: typeof SHEET; now?: string } = {},
) =>
  decideJoint(
    {
      card: cardOf(records, more.sheet ?? SHEET),
      neighbours: more.neighbours ?? HUNG,
      now: more.now ?? clock('18:00'),
      version: 1,
    },
    record,
    actor,
  );

const step = (index: number, more: Parameters<typeof stepBody>[1] = {}, at = clock('09:00')) =>
  asked('joint', at, stepBody(index, more));
const acceptance = (differencesRead = false) =>
  asked('joint', clock('10:00'), { kind: 'joint-accepted', differencesRead, note: null } as const);
const reopening = (reason: string, fromStep: number | null = null, at = clock('11:00')) =>
  asked('joint', at, { kind: 'joint-reopened', reason, fromStep } as const);

describe('a joint card', () => {
  test('goes open, seated at the hold point, closed with the lower clamp, accepted by another person', () => {
    expect(cardOf([]).state).toBe('open');
    expect(cardOf(stepsTo(3)).state).toBe('open');
    expect(cardOf(stepsTo(HOLD)).state).toBe('seated');
    expect(cardOf(stepsTo(5)).state).toBe('seated');
    expect(cardOf(stepsTo(6)).state).toBe('closed');
    const accepted = decide(stepsTo(7), acceptance(), OKAFOR);
    expect(accepted).toMatchObject({
      ok: true,
      outcome: 'credited',
      state: { state: 'accepted', accepted: { by: { name: 'S. Okafor' } } },
    });
  });

  test('shows each step with who did it and when, the next one, and who installed', () => {
    const card = cardOf(stepsTo(2));
    expect(card.steps[2]?.done).toMatchObject({
      by: { name: 'R. Ibe' },
      at: stepAt(2),
      torque: { appliedNm: 20, verdict: 'as-stated' },
    });
    expect(card.next).toMatchObject({ index: 3, text: 'contact set of the right frame centred and pushed home' });
    expect(card.installers).toEqual([{ id: 'u-ibe', name: 'R. Ibe' }]);
  });

  test('a check is no installing, so its person may accept', () => {
    expect(cardOf(stepsTo(7)).installers.map(({ name }) => name)).toEqual(['R. Ibe']);
  });
});

describe('a joint step is refused', () => {
  test('mistake 32: the lower clamp before the hold point, which it would hide', () => {
    expect(decide(stepsTo(3), step(6))).toEqual({
      ok: false,
      refusal: {
        code: 'joint.hold-first',
        args: {
          step: 7,
          text: 'lower clamp centred, bolt tightened',
          hold: 5,
          holdText: 'seating worked to both ends and seen, pole by pole',
        },
      },
    });
  });

  test('out of order, with the step that comes first', () => {
    expect(decide(stepsTo(0), step(2))).toMatchObject({
      refusal: { code: 'joint.out-of-order', args: { step: 3, next: 2, nextText: DEMO_STEPS[1] } },
    });
  });

  test('when it is done already, with who did it', () => {
    expect(decide(stepsTo(2), step(1), LUND)).toMatchObject({
      refusal: { code: 'joint.step-done', args: { step: 2, by: 'R. Ibe' } },
    });
  });

  test.each(['planned', 'on-site'] as const)('when a neighbour is only %s', (state) => {
    const neighbours = [HUNG[0], { mark: 'L2-R03-A-P05', state, quarantineReason: null }].filter(
      (piece) => piece !== undefined,
    );
    expect(decide([], step(0), IBE, { neighbours })).toMatchObject({
      refusal: { code: 'joint.neighbour-not-hung', args: { mark: 'L2-R03-A-P05', state } },
    });
  });

  test('on a quarantined piece, with the reason of the quarantine', () => {
    const neighbours = [{ mark: 'L2-R03-A-P05', state: 'quarantined', quarantineReason: 'crate 3 wet' } as const];
    expect(decide([], step(0), IBE, { neighbours })).toMatchObject({
      refusal: { code: 'piece.quarantined', args: { reason: 'crate 3 wet' } },
    });
  });

  test('when it joins no piece that the record knows', () => {
    expect(decide([], step(0), IBE, { neighbours: [] })).toMatchObject({ refusal: { code: 'joint.no-neighbour' } });
  });

  test('at the hold point without every pole seen at both ends, naming those that are missing', () => {
    const poles = ALL_POLES.map((seen) => (seen.pole === 'N' ? { ...seen, far: false } : seen)).filter(
      ({ pole }) => pole !== 'L2',
    );
    expect(decide(stepsTo(3), step(HOLD, { poles }))).toMatchObject({
      refusal: {
        code: 'joint.poles-missing',
        args: { step: 5, missing: ['L2 near end', 'L2 far end', 'N far end'], of: 8 },
      },
    });
  });

  test('at the hold point without any ticks at all', () => {
    expect(decide(stepsTo(3), step(HOLD, { poles: null }))).toMatchObject({
      refusal: { code: 'joint.poles-missing', args: { of: 8 } },
    });
  });

  test('with a pole that the type does not have', () => {
    const sheet = jointSheet({ ...DEMO_TYPE, neutral: 'none' });
    expect(decide(stepsTo(3), step(HOLD), IBE, { sheet })).toMatchObject({
      refusal: { code: 'joint.pole-unknown', args: { pole: 'N' } },
    });
  });

  test('a torque step without its torque', () => {
    expect(decide(stepsTo(1), step(2, { torque: null }))).toMatchObject({
      refusal: { code: 'joint.torque-missing', args: { step: 3 } },
    });
  });

  test('a torque outside the tolerance that the sheet states', () => {
    const steps = DEMO_STEPS.map((line) => (line.startsWith('TORQUE: upper') ? `${line} ± 10 %` : line));
    const sheet = jointSheet({ ...DEMO_TYPE, joint: { ...DEMO_TYPE.joint, steps } });
    const low = step(2, { text: 'upper clamp centred, bolt tightened ± 10 %', torque: { ...GOOD_TORQUE, value: 15 } });
    expect(decide(stepsTo(1), low, IBE, { sheet })).toMatchObject({
      refusal: {
        code: 'joint.torque-out',
        args: { step: 3, appliedNm: 15, statedNm: 20, leastNm: 18, greatestNm: 22 },
      },
    });
  });

  test('a check by the person who did the work', () => {
    expect(decide(stepsTo(6), step(7), IBE)).toMatchObject({
      refusal: { code: 'joint.check-own-work', args: { name: 'R. Ibe', step: 8 } },
    });
    expect(decide(stepsTo(6), step(7), LUND)).toMatchObject({ ok: true });
  });

  test('on a card whose words the sheet has changed since it was shown', () => {
    expect(decide(stepsTo(1), step(2, { text: 'upper clamp tightened' }))).toMatchObject({
      refusal: { code: 'joint.sheet-changed', args: { step: 3 } },
    });
  });

  test('on a type without a step list', () => {
    const sheet = jointSheet({ ...DEMO_TYPE, joint: { ...DEMO_TYPE.joint, steps: null } });
    expect(decide([], step(0), IBE, { sheet })).toMatchObject({ refusal: { code: 'joint.no-step-list' } });
    expect(decide([], acceptance(), OKAFOR, { sheet })).toMatchObject({ refusal: { code: 'joint.no-step-list' } });
  });

  test('a step past the end of the list', () => {
    expect(decide(stepsTo(7), asked('joint', clock('09:00'), { ...stepBody(7), step: 8 }))).toMatchObject({
      refusal: { code: 'joint.unknown-step', args: { step: 9, steps: 8 } },
    });
  });

  test('made on an older reading of the joint, from the future, or before the step that it follows', () => {
    expect(decide([], { ...step(0), seenVersion: 7 })).toMatchObject({
      refusal: { code: 'record.stale', args: { seen: 7, current: 1 } },
    });
    expect(decide([], step(0, {}, clock('18:06')))).toMatchObject({ refusal: { code: 'record.in-future' } });
    expect(decide([], step(0, {}, clock('18:04')))).toMatchObject({ ok: true });
    expect(decide(stepsTo(2), step(3, {}, clock('07:00')))).toMatchObject({
      refusal: { code: 'record.before-previous', args: { previousAt: stepAt(2) } },
    });
  });
});

describe('a torque tool out of calibration (mistake 30)', () => {
  const expired = { ...GOOD_TORQUE, toolId: 'T-07', calibrationDue: '2026-05-09' };

  test('is kept as information, and the step stays open', () => {
    const decision = decide(stepsTo(1), step(2, { torque: expired }));
    expect(decision).toMatchObject({
      ok: true,
      outcome: 'information-only',
      state: { next: { index: 2 } },
      remarks: [
        { code: 'tool.calibration-expired', args: { id: 'T-07', due: '2026-05-09', day: '2026-05-12', daysOver: 3 } },
      ],
    });
  });

  test('the step can then be done with a good tool, and both records stand', () => {
    const records = [...stepsTo(1), kept(step(2, { torque: expired }), IBE)];
    const after = decide(records, step(2, {}, clock('09:30')));
    expect(after).toMatchObject({
      ok: true,
      outcome: 'credited',
      state: { next: { index: 3 }, uncredited: [{ step: 2 }] },
    });
  });

  test('the due day itself is still in date, on the calendar of the site and not of UTC', () => {
    const dueToday = { ...GOOD_TORQUE, calibrationDue: '2026-05-12' };
    // 23:30 in Chicago is already 13 May in UTC.
    const late = step(2, { torque: dueToday }, clock('23:30'));
    expect(decide(stepsTo(1), late, IBE, { now: clock('23:40') })).toMatchObject({ outcome: 'credited' });
  });
});

describe('accepting a joint', () => {
  test('mistake 31: never by a person who did one of its steps', () => {
    expect(decide(stepsTo(7), acceptance(), IBE)).toMatchObject({
      refusal: { code: 'joint.own-work', args: { name: 'R. Ibe' } },
    });
    const oneByLund = [...stepsTo(2), kept(asked('joint', stepAt(3), stepBody(3)), LUND), ...stepsTo(7).slice(4)];
    expect(decide(oneByLund, acceptance(), LUND)).toMatchObject({ refusal: { code: 'joint.own-work' } });
  });

  test('not before every step is done, the check included', () => {
    expect(decide(stepsTo(6), acceptance(), OKAFOR)).toMatchObject({
      refusal: { code: 'joint.not-closed', args: { next: 8, open: 1 } },
    });
  });

  test('not twice', () => {
    const accepted = [...stepsTo(7), kept(acceptance(), OKAFOR)];
    expect(decide(accepted, acceptance(), WEISS)).toMatchObject({
      refusal: { code: 'joint.accepted-already', args: { by: 'S. Okafor' } },
    });
  });

  test('a torque that no tolerance judges waits until the acceptor says to have read the difference', () => {
    const high = { ...GOOD_TORQUE, value: 15, unit: 'lbf-ft' } as const;
    const records = stepsTo(7).map((record) =>
      record.body.kind === 'joint-step' && record.body.step === 2
        ? { ...record, body: { ...record.body, torque: high } }
        : record,
    );
    expect(cardOf(records).remarks).toMatchObject([{ code: 'torque.differs', args: { step: 3, statedNm: 20 } }]);
    expect(decide(records, acceptance(), OKAFOR)).toMatchObject({
      refusal: { code: 'joint.torque-difference-unread', args: { statedNm: 20, differences: [{ step: 3 }] } },
    });
    expect(decide(records, acceptance(true), OKAFOR)).toMatchObject({ ok: true, state: { state: 'accepted' } });
  });

  test('a torque step on a sheet that states no torque bars acceptance, read or not', () => {
    const sheet = jointSheet({ ...DEMO_TYPE, joint: { ...DEMO_TYPE.joint, torqueNm: null } });
    expect(decide(stepsTo(7), acceptance(true), OKAFOR, { sheet })).toMatchObject({
      refusal: { code: 'joint.torque-unknown', args: { step: 3, appliedNm: 20 } },
    });
  });

  test('a sheet that names no hold point still works in order and warns', () => {
    const steps = ['upper clamp on', 'lower clamp on'];
    const sheet = jointSheet({ ...DEMO_TYPE, joint: { ...DEMO_TYPE.joint, torqueNm: null, steps } });
    const plain = (index: number) =>
      asked('joint', stepAt(index), { ...stepBody(0), step: index, text: steps[index] ?? '' });
    const records = [kept(plain(0), IBE), kept(plain(1), IBE)];
    expect(decide([], plain(1), IBE, { sheet })).toMatchObject({ refusal: { code: 'joint.out-of-order' } });
    expect(cardOf(records, sheet)).toMatchObject({ state: 'closed', remarks: [{ code: 'sheet.no-hold' }] });
    expect(decide(records, acceptance(), OKAFOR, { sheet })).toMatchObject({ ok: true, state: { state: 'accepted' } });
  });
});

describe('reopening a joint', () => {
  test('undoes the hold point too, whichever later step is to be done again, since the contact set is free', () => {
    const records = [...stepsTo(7), kept(acceptance(), OKAFOR), kept(reopening('lower clamp off centre', 6), OKAFOR)];
    const card = cardOf(records);
    expect(card).toMatchObject({
      state: 'reopened',
      accepted: null,
      next: { index: HOLD },
      reopenings: [{ reason: 'lower clamp off centre' }],
    });
    expect(card.steps.map(({ done }) => done !== null)).toEqual([true, true, true, true, false, false, false, false]);
  });

  test('without a step named undoes the whole joint', () => {
    expect(cardOf([...stepsTo(7), kept(reopening('water in the joint'), LUND)]).next?.index).toBe(0);
  });

  test('is refused on a joint that nobody has begun', () => {
    expect(decide([], reopening('opened'), LUND)).toMatchObject({ refusal: { code: 'joint.nothing-to-reopen' } });
  });

  test('cannot be taken back: what was once said to be open is made again', () => {
    const opened = kept(reopening('opened to look'), LUND);
    const withdrawal = asked('joint', clock('12:00'), { kind: 'record-withdrawn' } as const, {
      supersedes: { id: opened.id, cause: 'not opened after all' },
    });
    const site = { card: cardOf([...stepsTo(7), opened]), neighbours: HUNG, now: clock('18:00'), version: 1 };
    expect(decideJoint(site, withdrawal, LUND)).toMatchObject({
      refusal: { code: 'record.cannot-withdraw', args: { kind: 'joint-reopened' } },
    });
  });

  test('scenario T4: pole N proud on one of twelve joints gives a first-pass yield of 11/12 = 91.7 %', () => {
    const clean: JointCard = cardOf([...stepsTo(7), kept(acceptance(), OKAFOR)]);
    const again = (index: number) =>
      kept(asked('joint', clock(`12:${10 + index}`), stepBody(index)), index === 7 ? OKAFOR : IBE);
    const reworked = cardOf([
      ...stepsTo(3),
      kept(reopening('pole N proud', 3), LUND),
      ...[3, 4, 5, 6, 7].map(again),
      kept(
        asked('joint', clock('13:00'), { kind: 'joint-accepted', differencesRead: false, note: null } as const),
        OKAFOR,
      ),
    ]);
    expect(reworked.state).toBe('accepted');
    const yielded = firstPassYield([...Array.from({ length: 11 }, () => clean), reworked]);
    expect(yielded).toMatchObject({ firstTime: 11, accepted: 12 });
    expect(yielded.percent).toBeCloseTo(91.7, 1);
  });

  test('no joint accepted yet has no yield, which is not a yield of nought', () => {
    expect(firstPassYield([cardOf(stepsTo(3))]).percent).toBeNull();
  });
});

describe('correcting a joint record', () => {
  const wrong = kept(asked('joint', stepAt(2), stepBody(2, { torque: { ...GOOD_TORQUE, value: 2 } })), IBE);
  const records = [...stepsTo(1), wrong, ...stepsTo(7).slice(3)];
  const corrected = asked('joint', stepAt(2), stepBody(2), { supersedes: { id: wrong.id, cause: 'typed 2 for 20' } });

  test('the corrected step stands in the place of the first, and both stay in the book', () => {
    const decision = decide(records, corrected, IBE);
    expect(decision).toMatchObject({ ok: true, state: { state: 'closed', remarks: [] } });
    expect(decision.ok && decision.state.records).toHaveLength(9);
    expect(decision.ok && decision.state.steps[2]?.done?.torque?.appliedNm).toBe(20);
  });

  test('an acceptance and a reopening are corrected in their place', () => {
    const accepted = kept(acceptance(true), OKAFOR);
    const noted = asked(
      'joint',
      clock('10:00'),
      { kind: 'joint-accepted', differencesRead: true, note: 'label set' } as const,
      { supersedes: { id: accepted.id, cause: 'note forgotten' } },
    );
    expect(decide([...records, accepted], noted, OKAFOR)).toMatchObject({
      ok: true,
      state: { state: 'accepted', accepted: { recordId: noted.id } },
    });
    const opened = kept(reopening('found open'), LUND);
    const reason = {
      ...reopening('found open by the painter'),
      supersedes: { id: opened.id, cause: 'reason incomplete' },
    };
    expect(decide([...records, opened], reason, LUND)).toMatchObject({
      ok: true,
      state: { state: 'reopened', reopenings: [{ reason: 'found open by the painter' }] },
    });
  });

  test('a record is corrected once; the next correction names the correction', () => {
    expect(
      decide([...records, kept(corrected, IBE, clock('09:00'))], { ...corrected, id: 'again' }, IBE),
    ).toMatchObject({ refusal: { code: 'record.already-superseded' } });
  });

  test('a step is not replaced by another kind of record, nor one that the book does not hold', () => {
    const supersedes = { id: wrong.id, cause: 'slip' };
    expect(decide(records, { ...reopening('slip'), supersedes }, IBE)).toMatchObject({
      refusal: { code: 'record.supersedes-another-kind', args: { replaced: 'joint-step' } },
    });
    expect(decide(records, { ...corrected, supersedes: { id: 'nowhere', cause: 'slip' } }, IBE)).toMatchObject({
      refusal: { code: 'record.nothing-superseded' },
    });
  });

  test('an acceptor who then rewrites a step has joined the work, and the acceptance falls', () => {
    const accepted = [...records, kept(acceptance(true), OKAFOR)];
    expect(cardOf(accepted).state).toBe('accepted');
    expect(decide(accepted, corrected, OKAFOR)).toMatchObject({ ok: true, state: { state: 'closed', accepted: null } });
  });

  test('also when the check was made by a third person, so that every step still counts', () => {
    const checkedByLund = records.map((entry) =>
      entry.by.id === OKAFOR.id ? { ...entry, by: { id: LUND.id, name: LUND.name } } : entry,
    );
    const accepted = [...checkedByLund, kept(acceptance(true), OKAFOR)];
    expect(cardOf(accepted).state).toBe('accepted');
    expect(decide(accepted, corrected, OKAFOR)).toMatchObject({
      ok: true,
      state: { state: 'closed', next: null, accepted: null },
    });
  });

  test('the first writer of a corrected step still counts as an installer', () => {
    const byLund = [...records, kept(corrected, LUND, clock('09:00'))];
    expect(cardOf(byLund).installers.map(({ name }) => name)).toEqual(['R. Ibe', 'K. Lund']);
  });

  test('withdrawing a step takes it and the acceptance away', () => {
    const accepted = [...stepsTo(7), kept(acceptance(), OKAFOR)];
    const sixth = accepted[6]?.id ?? '';
    const withdrawal = kept(
      asked('joint', clock('12:00'), { kind: 'record-withdrawn' } as const, {
        supersedes: { id: sixth, cause: 'recorded on the wrong joint' },
      }),
      IBE,
    );
    expect(cardOf([...accepted, withdrawal])).toMatchObject({ accepted: null, next: { index: 6 } });
  });
});

test('whatever is tried in whatever order, steps are credited in order and nobody accepts the own joint', () => {
  const attempt = fc.record({
    what: fc.constantFrom('step', 'step', 'step', 'step', 'accept', 'reopen'),
    index: fc.nat(7),
    who: fc.constantFrom(IBE, LUND, OKAFOR),
    ticks: fc.constantFrom(ALL_POLES, ALL_POLES, null),
    due: fc.constantFrom('2026-11-30', '2026-11-30', '2026-05-01'),
  });
  fc.assert(
    fc.property(fc.array(attempt, { maxLength: 60 }), (attempts) => {
      let records: SiteRecord[] = [];
      for (const [turn, { what, index, who, ticks, due }] of attempts.entries()) {
        const at = clock(`09:${String(turn).padStart(2, '0')}`);
        const good = stepBody(index);
        const bodies = {
          step: { ...good, poles: good.poles && ticks, torque: good.torque && { ...GOOD_TORQUE, calibrationDue: due } },
          accept: { kind: 'joint-accepted', differencesRead: false, note: null },
          reopen: { kind: 'joint-reopened', reason: 'found open', fromStep: index },
        } as const;
        const record = asked('joint', at, bodies[what]);
        const decision = decide(records, record, who);
        if (decision.ok) records = [...records, kept(record, who)];
      }
      const card = cardOf(records);
      const done = card.steps.map((entry) => entry.done !== null);
      expect(done.indexOf(false) === -1 || !done.slice(done.indexOf(false)).includes(true)).toBe(true);
      expect(card.state === 'accepted').toBe(card.accepted !== null);
      expect(card.installers.some(({ id }) => id === card.accepted?.by.id)).toBe(false);
      expect(['seated', 'closed', 'accepted'].includes(card.state)).toBe(done[HOLD]);
    }),
    { numRuns: 300 },
  );
});
