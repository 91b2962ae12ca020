import { describe, expect, test } from 'vitest';
import type { QualityRefusal } from '../../../src/domain/quality/refusal.ts';
import type { Remark } from '../../../src/domain/quality/remark.ts';
import { type OpenPoint, RUN_STATUSES } from '../../../src/domain/quality/run-status.ts';
import { FOOT, INCH } from '../../../src/domain/units/length.ts';
import type { ArgsOf } from '../../../views/words/quality/told.ts';
import { questionWords, readingWords, refusalWords, remarkWords } from '../../../views/words/quality.ts';
import { openPointWords, runStatusWord } from '../../../views/words/run-status.ts';

const SAY = { units: 'ft-in', zone: 'America/Chicago' } as const;
const AT = '2026-05-12T13:10:00Z';
const BY = { by: 'R. Ibe', at: AT };
const PIECE = { mark: 'L2-R03-A-P08', state: 'on-site' } as const;
const SIDE = { mark: 'L2-R03-A-P08', needed: 'left', seen: 'right' } as const;

/** One of every refusal; the compiler asks for those that are missing. */
const REFUSALS: ArgsOf<QualityRefusal> = {
  'record.in-future': { at: AT, now: AT },
  'record.before-previous': { at: AT, previousAt: AT },
  'record.stale': { seen: 3, current: 4 },
  'record.other-subject': { kind: 'joint-step', subject: 'piece' },
  'record.nothing-superseded': { id: 'r1' },
  'record.supersedes-another-kind': { kind: 'joint-reopened', replaced: 'joint-step' },
  'record.already-superseded': { id: 'r1' },
  'record.withdrawal-names-none': {},
  'record.cannot-withdraw': { kind: 'joint-reopened' },
  'record.failed-test-withdrawn': { verdict: 'fail' },
  'piece.quarantined': { mark: 'L2-R03-A-P08', reason: 'crate 3 wet' },
  'piece.not-quarantined': { mark: 'L2-R03-A-P08' },
  'piece.already-quarantined': { mark: 'L2-R03-A-P08', reason: 'crate 3 wet' },
  'piece.already-on-site': { mark: 'L2-R03-A-P08', ...BY },
  'piece.already-hung': { mark: 'L2-R03-A-P08', ...BY },
  'piece.side-turn': { ...SIDE, kind: 'stock' },
  'piece.side-reorder': { ...SIDE, kind: 'elbow', neededHand: 'inside', seenHand: 'outside' },
  'piece.confirmed-alone': { name: 'R. Ibe' },
  'piece.joints-begun': { mark: 'L2-R03-A-P08', joints: ['L2-R03-A-J07'] },
  'piece.release-role': { as: 'inspector', role: 'office' },
  'piece.release-signed': { as: 'office', ...BY },
  'piece.release-same-person': { name: 'T. Weiss' },
  'joint.no-step-list': {},
  'joint.unknown-step': { step: 9, steps: 8 },
  'joint.sheet-changed': { step: 3, shown: 'bolt tightened', now: 'upper clamp centred' },
  'joint.step-done': { step: 3, text: 'upper clamp centred', ...BY },
  'joint.out-of-order': { step: 3, text: 'upper clamp centred', next: 2, nextText: 'lower clamp parked clear' },
  'joint.hold-first': { step: 9, text: 'lower clamp centred', hold: 7, holdText: 'every pole seen' },
  'joint.neighbour-not-hung': PIECE,
  'joint.no-neighbour': {},
  'joint.poles-missing': { step: 7, missing: ['L2 near end', 'N far end'], of: 8 },
  'joint.pole-unknown': { pole: 'N' },
  'joint.torque-missing': { step: 4, text: 'upper clamp centred' },
  'joint.torque-out': { step: 4, appliedNm: 15, statedNm: 20, leastNm: 18, greatestNm: 22 },
  'joint.check-own-work': { name: 'R. Ibe', step: 10, text: 'looked over' },
  'joint.accepted-already': BY,
  'joint.not-closed': { next: 8, nextText: 'looked over', open: 1 },
  'joint.own-work': { name: 'R. Ibe' },
  'joint.torque-unknown': { step: 4, appliedNm: 20 },
  'joint.torque-difference-unread': { statedNm: 20, differences: [{ step: 4, appliedNm: 27.116 }] },
  'joint.nothing-to-reopen': {},
  'support.not-ready': { missing: ['rod plumb', 'lock nut'] },
  'support.position': {
    measured: 20 * FOOT + 4 * INCH,
    broken: [{ rule: 'joint', from: 20 * FOOT, distance: 4 * INCH, limit: FOOT, reason: null }],
    nearest: 21 * FOOT,
    below: 19 * FOOT,
    above: 21 * FOOT,
  },
  'support.already-set': BY,
  'support.not-set': {},
  'support.accepted-already': BY,
  'support.own-work': { name: 'R. Ibe' },
  'tap.not-isolated': { missing: ['absence of voltage proved'] },
  'tap.proved-after': { provedAt: AT, at: AT },
  'tap.device-not-locked': { missing: ['locked'] },
  'tap.no-steps': {},
  'tap.phases-differ': { planned: 'L2', found: 'L1' },
  'tap.piece-not-hung': PIECE,
  'tap.already-on-site': BY,
  'tap.already-set': BY,
  'tap.not-set': {},
  'tap.already-checked': BY,
  'tap.own-work': { name: 'R. Ibe' },
  'tap.removed': {},
  'tap.drop-unsupported': { limit: 6 * FOOT },
  'tap.drop-too-far': { distance: 7 * FOOT, limit: 6 * FOOT, source: 'NEC 368.56(B)' },
  'tap.no-drop': {},
  'end.not-open': { end: 'near', ends: ['far'] },
  'end.not-ready': { end: 'far', missing: ['screw set'] },
  'end.already-closed': { end: 'far', ...BY },
  'end.not-closed': { end: 'far' },
  'end.piece-not-hung': { end: 'far', ...PIECE },
  'slot.already-closed': BY,
  'slot.not-closed': {},
  'activity.over-counted': { activity: 'label', total: 24, done: 20, asked: 5 },
  'insulation.rule-locked': { locked: 'acceptance-1000ft', asked: 'busway-guide' },
  'insulation.rating-outside': { ratedV: 1500, greatestV: 1000, source: 'table 100.1' },
  'insulation.test-voltage': { neededV: 1000, usedV: 500, source: 'table 100.1' },
  'insulation.temperature-outside': { tempC: 120, fahrenheitAsC: 48.9, leastC: -10, greatestC: 110 },
  'insulation.limit-looser': { projectMegohm: 50, ruleMegohm: 100, source: 'a letter' },
  'insulation.unknown-pair': { pair: 'L1-IG', pairs: ['L1-L2', 'N-G'] },
  'insulation.pair-twice': { pair: 'L1-L2' },
  'insulation.no-length': {},
  'insulation.humidity-outside': { percent: 0 },
  'insulation.question-open': { questions: [{ code: 'temperature-high', args: { tempC: 82, fahrenheitAsC: 27.78 } }] },
};

const REMARKS: ArgsOf<Remark> = {
  'tool.calibration-expired': { id: 'T-07', due: '2026-05-09', day: '2026-05-12', daysOver: 3 },
  'tool.calibration-unknown': { id: 'T-07' },
  'sheet.no-hold': {},
  'sheet.hold-from-words': { step: 5, text: 'seating seen' },
  'sheet.torque-without-step': { torqueNm: 20 },
  'torque.differs': { step: 4, appliedNm: 27.116, statedNm: 20, differencePercent: 35.58 },
  'torque.no-stated-value': { step: 4, appliedNm: 20 },
  'step.sheet-changed': { step: 4, shown: 'bolt tightened' },
  'piece.release-awaits': { role: 'inspector' },
  'support.limit-unknown': { limit: 'spacing' },
  'support.load-not-reworked': { moved: -6 * INCH },
  'drop.limit-not-judged': {},
  'insulation.dew-point-unknown': {},
  'insulation.surface-near-dew-point': { surfaceTempC: 19, dewPointC: 18.2, leastC: 21.2 },
  'insulation.temperature-missing': {},
  'insulation.locks-rule': { rule: 'acceptance-1000ft' },
  'test.stale': { testAt: AT, workAt: AT },
};

const refusals = Object.entries(REFUSALS).map(([code, args]) => ({ code, args }) as QualityRefusal);
const remarks = Object.entries(REMARKS).map(([code, args]) => ({ code, args }) as Remark);

const EMPTY_WORDS = /invalid|undefined|null|NaN|\[object|\bconfigured\b/i;

describe('words for what is refused', () => {
  test.each(refusals)('$code says what is wrong and what to do', (refusal) => {
    const { what, number, remedy } = refusalWords(refusal, SAY);
    expect(what).toMatch(/^[^\s].{10,}[.?]$/);
    expect(remedy).toMatch(/^[^\s].{10,}[.]$/);
    expect(`${what} ${number ?? ''} ${remedy}`).not.toMatch(EMPTY_WORDS);
    expect(number ?? 'a number').not.toBe('');
  });

  test.each(remarks)('$code is told in words', (remark) => {
    const { what, number, remedy } = remarkWords(remark, SAY);
    expect(`${what} ${number ?? ''} ${remedy}`).not.toMatch(EMPTY_WORDS);
    expect(what.length).toBeGreaterThan(10);
    expect(remedy.length).toBeGreaterThan(10);
  });

  test('mistake 6: the number is the distance and what the tool needs, the remedy both legal places', () => {
    const told = refusalWords({ code: 'support.position', args: REFUSALS['support.position'] }, SAY);
    expect(told).toEqual({
      what: `The hanger cannot stand at 20'-4".`,
      number: `it is 4" from the joint at 20'-0"; the tool needs 1'-0"`,
      remedy: `Legal are 19'-0" and 21'-0"; the nearer is 21'-0". Move it and measure again.`,
    });
    expect(
      refusalWords({ code: 'support.position', args: REFUSALS['support.position'] }, { ...SAY, units: 'metric' }).what,
    ).toBe('The hanger cannot stand at ≈6.198 m.');
  });

  test('mistake 28: the question offers the other reading', () => {
    expect(questionWords({ code: 'temperature-high', args: { tempC: 82, fahrenheitAsC: 27.78 } }, SAY)).toMatchObject({
      what: 'Is the housing really at 82 °C?',
      number: '82 °F would be 27.8 °C',
    });
  });

  test('mistakes 25, 26 and 27: readings and lengths are asked with both figures', () => {
    expect(
      questionWords(
        { code: 'unit-mix', args: { usual: 'MΩ', odd: [{ pair: 'L2-N', written: '0.95', unit: 'GΩ', megohm: 950 }] } },
        SAY,
      ).number,
    ).toBe('L2-N: 0.95 GΩ = 950 MΩ');
    expect(
      questionWords(
        { code: 'over-range-code', args: { readings: [{ pair: 'L1-L2', written: '9999', unit: 'MΩ' }] } },
        SAY,
      ).number,
    ).toBe('L1-L2: 9999 MΩ');
    expect(
      questionWords(
        {
          code: 'length-differs',
          args: { typed: 100 * FOOT, recorded: 70 * FOOT, byTypedMegohm: 136.7, byRecordedMegohm: 95.69 },
        },
        SAY,
      ).number,
    ).toBe(
      `sheet 100'-0", record 70'-0"; the lowest reading for 1,000 ft, before temperature, would be 136.7 MΩ instead of 95.69 MΩ`,
    );
    expect(readingWords({ code: 'reading.over-range', args: { written: 'OL' } }, SAY).remedy).toContain('top range');
  });

  test('the wrong elbow is stopped, and turning it is no remedy', () => {
    const told = refusalWords({ code: 'piece.side-reorder', args: REFUSALS['piece.side-reorder'] }, SAY);
    expect(told.what).toMatch(/^Stop:/);
    expect(told.number).toBe('needed: inside; this one: outside');
    expect(told.remedy).toContain('does not help');
  });

  test('times are told in the zone of the job', () => {
    expect(refusalWords({ code: 'joint.accepted-already', args: BY }, SAY).number).toBe(
      'by R. Ibe, 12 May 2026, 08:10 CDT',
    );
  });
});

describe('words for the status of a run', () => {
  test('each has its own, and none speaks of energising', () => {
    expect(RUN_STATUSES.map(runStatusWord)).toEqual(['planned', 'in installation', 'mechanically complete', 'tested']);
  });

  test('an open point carries its count', () => {
    const point: OpenPoint = { code: 'joints-not-accepted', count: 1, of: 4, detail: null };
    expect(openPointWords(point)).toBe('1 of 4 joints not accepted.');
    expect(openPointWords({ ...point, code: 'test-not-passed', detail: 'fail' })).toContain('fail');
  });
});
