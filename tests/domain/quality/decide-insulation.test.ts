import { describe, expect, test } from 'vitest';
import { decideInsulationTest, type InsulationSite } from '../../../src/domain/quality/decide-insulation.ts';
import type { InsulationTestBody } from '../../../src/domain/quality/record.ts';
import { FOOT } from '../../../src/domain/units/length.ts';
import { asked, clock, INSULATION_BODY, kept, OKAFOR } from './cast.ts';

const CONDUCTORS = { poles: 3, neutral: 'full' } as const;

const SITE: InsulationSite = {
  lockedRule: null,
  records: [],
  ratedVoltageV: 600,
  nominalVoltageV: 415,
  length: 70 * FOOT,
  projectLimit: null,
  conductors: CONDUCTORS,
  timeZone: 'America/Chicago',
  now: clock('18:00'),
  version: 1,
};

const tested = (more: Partial<InsulationTestBody> = {}) =>
  asked('run', clock('14:00'), { ...INSULATION_BODY, ...more });

describe('recording an insulation test', () => {
  test('the first test of a project locks its rule', () => {
    expect(decideInsulationTest(SITE, tested())).toMatchObject({
      ok: true,
      outcome: 'credited',
      state: { verdict: 'pass' },
      remarks: [{ code: 'insulation.locks-rule', args: { rule: 'acceptance-1000ft' } }],
    });
  });

  test('later tests are judged by the locked rule and no other', () => {
    const locked = { ...SITE, lockedRule: 'acceptance-1000ft' } as const;
    expect(decideInsulationTest(locked, tested())).toMatchObject({ ok: true, remarks: [] });
    expect(decideInsulationTest(locked, tested({ rule: 'busway-guide' }))).toMatchObject({
      refusal: { code: 'insulation.rule-locked', args: { locked: 'acceptance-1000ft', asked: 'busway-guide' } },
    });
  });

  test('a doubtful figure is asked about first, and taken once it was said to stand', () => {
    expect(decideInsulationTest(SITE, tested({ surfaceTempC: 82 }))).toMatchObject({
      refusal: { code: 'insulation.question-open', args: { questions: [{ code: 'temperature-high' }] } },
    });
    expect(decideInsulationTest(SITE, tested({ surfaceTempC: 82, confirmed: ['temperature-high'] }))).toMatchObject({
      ok: true,
    });
  });

  test('a failing test is kept with its verdict', () => {
    const readings = INSULATION_BODY.readings.map(({ pair }) => ({
      pair,
      reading: { kind: 'value', comparator: '=', value: 3, unit: 'MΩ', written: '3' } as const,
    }));
    expect(decideInsulationTest(SITE, tested({ readings }))).toMatchObject({
      ok: true,
      outcome: 'credited',
      state: { verdict: 'fail' },
    });
  });

  test('a test with an instrument out of calibration is kept as information', () => {
    expect(
      decideInsulationTest(SITE, tested({ instrument: { id: 'T-07', calibrationDue: '2026-05-09', topRange: null } })),
    ).toMatchObject({ ok: true, outcome: 'information-only' });
  });

  test('mistake 39: a failed test is never withdrawn; another test supersedes it with a cause', () => {
    const failed = { ...kept(tested(), OKAFOR), outcome: 'fail' } as const;
    const supersedes = { id: failed.id, cause: 'feeder was not lifted' };
    expect(decideInsulationTest({ ...SITE, records: [failed] }, { ...tested(), supersedes })).toMatchObject({
      ok: true,
    });
  });

  test('a test from the future is refused', () => {
    expect(decideInsulationTest(SITE, { ...tested(), at: clock('19:00') })).toMatchObject({
      refusal: { code: 'record.in-future' },
    });
  });
});
