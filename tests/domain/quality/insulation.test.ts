import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { insulationCriterion } from '../../../src/domain/quality/insulation/criterion.ts';
import { dewPointC } from '../../../src/domain/quality/insulation/dew-point.ts';
import { pairsOf } from '../../../src/domain/quality/insulation/pairs.ts';
import { parseReading, type Reading } from '../../../src/domain/quality/insulation/reading.ts';
import { temperatureFactor } from '../../../src/domain/quality/insulation/temperature-factor.ts';
import {
  type InsulationInput,
  type InsulationReport,
  judgeInsulation,
} from '../../../src/domain/quality/insulation-test.ts';
import { IEC_60364_6_INSULATION } from '../../../src/domain/tables/iec-60364-6.ts';
import { NETA_100_1 } from '../../../src/domain/tables/neta-ats.ts';
import { FOOT } from '../../../src/domain/units/length.ts';
import { clock } from './cast.ts';

const CONDUCTORS = { poles: 3, neutral: 'full' } as const;
const PAIRS = pairsOf(CONDUCTORS);

const mega = (value: number, comparator: '=' | '>' = '='): Reading => ({
  kind: 'value',
  comparator,
  value,
  unit: 'MΩ',
  written: String(value),
});
const all = (reading: Reading) => PAIRS.map((pair) => ({ pair, reading }));
/** All pairs alike but one. */
const allBut = (odd: string, reading: Reading, others: Reading = mega(2000)) =>
  PAIRS.map((pair) => ({ pair, reading: pair === odd ? reading : others }));

const TEST: InsulationInput['test'] = {
  rule: 'acceptance-1000ft',
  testVoltageV: 1000,
  instrument: { id: 'M-02', calibrationDue: '2026-11-30', topRange: null },
  surfaceTempC: 20,
  ambientTempC: 20,
  humidityPercent: 40,
  lengthTyped: null,
  readings: all(mega(2000)),
};

const input = (test: Partial<InsulationInput['test']> = {}, more: Partial<InsulationInput> = {}): InsulationInput => ({
  ratedVoltageV: 600,
  nominalVoltageV: 415,
  length: 70 * FOOT,
  projectLimit: null,
  conductors: CONDUCTORS,
  at: clock('14:00'),
  timeZone: 'America/Chicago',
  test: { ...TEST, ...test },
  ...more,
});

function report(test: Partial<InsulationInput['test']> = {}, more: Partial<InsulationInput> = {}): InsulationReport {
  const result = judgeInsulation(input(test, more));
  if (!result.ok) throw new Error(`refused: ${result.refusal.code}`);
  return result.report;
}

const pairOf = (found: InsulationReport, pair: string) => found.pairs.find((result) => result.pair === pair);

describe('the least resistance that a run must show', () => {
  const criterion = (more: Partial<Parameters<typeof insulationCriterion>[0]>) =>
    insulationCriterion({
      rule: 'acceptance-1000ft',
      ratedVoltageV: 600,
      nominalVoltageV: 415,
      length: 70 * FOOT,
      projectLimit: null,
      ...more,
    });

  test.each([
    ['neta-100-1-250V', 250, 500, 25],
    ['neta-100-1-600V', 600, 1000, 100],
    ['neta-100-1-1000V', 1000, 1000, 100],
  ])(
    '%s (ANSI/NETA MTS-2019, table 100.1, secondary copy): %i V is tested at %i V DC for %i MΩ',
    (_id, ratedVoltageV, testVoltageV, limitMegohm) => {
      expect(criterion({ ratedVoltageV })).toMatchObject({ ok: true, criterion: { testVoltageV, limitMegohm } });
      expect(NETA_100_1.rows.find((row) => row.ratingV === ratedVoltageV)).toMatchObject({
        testVoltageV,
        leastMegohm: limitMegohm,
      });
    },
  );

  test.each([
    ['neta-busway-1000ft-250, trap 4', 250, 400],
    ['neta-busway-1000ft-50', 50, 2000],
    ['neta-busway-1000ft-1000', 1000, 100],
  ])('%s (ANSI/NETA ATS 7.4, from memory): %i ft of 600 V busway must read %i MΩ', (_id, feet, needed) => {
    const found = criterion({ length: feet * FOOT });
    expect(found.ok && found.criterion.neededMegohm).toBeCloseTo(needed, 9);
  });

  test('nema-bu-ir, trap 4 (NEMA BU 1.1, from memory): 250 ft must read 0.4 MΩ, a thousandth of the acceptance rule', () => {
    const found = criterion({ rule: 'busway-guide', length: 250 * FOOT });
    expect(found.ok && found.criterion.neededMegohm).toBeCloseTo(0.4, 12);
  });

  test('a 70 ft run needs 1,429 MΩ by the acceptance rule and 1.43 MΩ by the guide, and each names itself', () => {
    const [acceptance, guide] = [criterion({}), criterion({ rule: 'busway-guide' })];
    expect(acceptance.ok && acceptance.criterion.neededMegohm).toBeCloseTo(1428.57, 2);
    expect(guide.ok && guide.criterion.neededMegohm).toBeCloseTo(1.42857, 5);
    expect(acceptance.ok && acceptance.criterion.text).toBe(
      'Acceptance rule: each reading corrected to 20 °C and × length / 1,000 ft is at least 100 MΩ; over 70 ft (21.34 m) a meter must show 1,429 MΩ at 20 °C. Test voltage 1000 V DC.',
    );
    expect(guide.ok && guide.criterion.text).toContain('100 / length in ft = 1.429 MΩ over 70 ft (21.34 m)');
    expect(acceptance.ok && acceptance.criterion.sources[0]).toContain('ANSI/NETA ATS, table 100.1');
  });

  test.each([
    ['iec60364-6-ir-2', 400, 500, 1.0],
    ['iec60364-6-ir-2', 500, 500, 1.0],
    ['iec60364-6-ir-3', 690, 1000, 1.0],
  ])(
    '%s (IEC 60364-6, table 6.1, secondary copy): a %i V circuit is tested at %i V DC for %f MΩ',
    (_id, nominalVoltageV, testVoltageV, limitMegohm) => {
      expect(criterion({ rule: 'iec-60364-6', nominalVoltageV, ratedVoltageV: 1000 })).toMatchObject({
        criterion: { testVoltageV, limitMegohm, lengthFactor: 1 },
      });
    },
  );

  test('iec60364-6-ir-1 (IEC 60364-6, table 6.1): the SELV and PELV row is held and never chosen by the voltage alone', () => {
    expect(IEC_60364_6_INSULATION.rows[0]).toMatchObject({
      circuit: 'SELV and PELV',
      testVoltageV: 250,
      leastMegohm: 0.5,
    });
    expect(criterion({ rule: 'iec-60364-6', nominalVoltageV: 48 })).toMatchObject({
      criterion: { testVoltageV: 500, limitMegohm: 1 },
    });
  });

  test('a rating between two rows takes the row above, and one past the last is refused', () => {
    expect(criterion({ ratedVoltageV: 415 })).toMatchObject({ criterion: { limitMegohm: 100 } });
    expect(criterion({ ratedVoltageV: 1500 })).toMatchObject({
      refusal: { code: 'insulation.rating-outside', args: { ratedV: 1500, greatestV: 1000 } },
    });
  });

  test('the project may ask for more and never for less', () => {
    const stricter = criterion({ projectLimit: { megohm: 200, source: 'specification 26 25 00, 3.4' } });
    expect(stricter.ok && stricter.criterion.neededMegohm).toBeCloseTo(2857.14, 2);
    expect(stricter.ok && stricter.criterion.text).toContain(
      'The project asks 200 MΩ (specification 26 25 00, 3.4) instead of 100 MΩ.',
    );
    expect(criterion({ projectLimit: { megohm: 99, source: 'a letter' } })).toMatchObject({
      refusal: { code: 'insulation.limit-looser', args: { projectMegohm: 99, ruleMegohm: 100 } },
    });
    expect(criterion({ projectLimit: { megohm: 100, source: 'same' } })).toMatchObject({ ok: true });
  });

  test('a run without a length has no criterion', () => {
    expect(criterion({ length: 0 })).toMatchObject({ refusal: { code: 'insulation.no-length' } });
  });
});

describe('correction to 20 °C', () => {
  const PRINTED = [
    [-10, 0.25],
    [-5, 0.32],
    [0, 0.4],
    [5, 0.5],
    [10, 0.63],
    [15, 0.81],
    [20, 1.0],
    [25, 1.25],
    [30, 1.58],
    [35, 2.0],
    [40, 2.5],
    [45, 3.15],
    [50, 3.98],
    [55, 5.0],
    [60, 6.3],
    [65, 7.9],
    [70, 10.0],
    [75, 12.6],
    [80, 15.8],
    [85, 20.0],
    [90, 25.2],
    [95, 31.6],
    [100, 40.0],
    [105, 50.4],
    [110, 63.2],
  ] as const;

  test.each(PRINTED)(
    'neta-100-14-solid, trap 5 (ANSI/NETA ATS, table 100.14.1, secondary copy): %i °C × %f to 20 °C, not 40',
    (tempC, factor) => {
      expect(temperatureFactor(tempC)).toBe(factor);
    },
  );

  test('neta-100-14-solid-0C and -30C (derived from the table): 100 MΩ is 40 MΩ at 0 °C and 158 MΩ at 30 °C', () => {
    expect(100 * (temperatureFactor(0) ?? 0)).toBeCloseTo(40, 12);
    expect(100 * (temperatureFactor(30) ?? 0)).toBeCloseTo(158, 12);
  });

  test('between the printed points the logarithm is interpolated: 28 °C is 1.439', () => {
    expect(temperatureFactor(28)).toBeCloseTo(1.439, 3);
    expect(temperatureFactor(28)).toBeCloseTo(Math.exp((2 * Math.log(1.25) + 3 * Math.log(1.58)) / 5), 12);
  });

  test('the factor grows with the temperature and stays between its printed neighbours', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 110, noNaN: true }),
        fc.double({ min: -10, max: 110, noNaN: true }),
        (a, b) => {
          const [low, high] = [
            temperatureFactor(Math.min(a, b)) ?? Number.NaN,
            temperatureFactor(Math.max(a, b)) ?? Number.NaN,
          ];
          expect(low).toBeLessThanOrEqual(high);
          expect(low).toBeGreaterThanOrEqual(0.25);
          expect(high).toBeLessThanOrEqual(63.2);
        },
      ),
    );
  });

  test.each([-10.1, 110.1, Number.NaN])('%f °C is outside the table and has no factor', (tempC) => {
    expect(temperatureFactor(tempC)).toBeNull();
  });
});

/** Saturation pressure over water, Pa, as the ASHRAE Handbook of Fundamentals gives it (Hyland and Wexler), from memory. */
function ashraeSaturation(tempC: number): number {
  const t = tempC + 273.15;
  return Math.exp(
    -5.8002206e3 / t +
      1.3914993 -
      4.8640239e-2 * t +
      4.1764768e-5 * t ** 2 -
      1.4452093e-8 * t ** 3 +
      6.5459673 * Math.log(t),
  );
}

describe('the dew point', () => {
  test('24 °C at 70 % is 18.2 °C', () => {
    expect(dewPointC(24, 70)).toBeCloseTo(18.2, 1);
  });

  test.each([
    [24, 70],
    [30, 50],
    [10, 90],
    [35, 25],
    [5, 60],
    [20, 100],
  ])(
    'at %i °C and %i %% the saturation pressure there is the vapour pressure (ASHRAE, within 0.5 %%)',
    (airC, percent) => {
      const vapour = (ashraeSaturation(airC) * percent) / 100;
      expect(ashraeSaturation(dewPointC(airC, percent)) / vapour).toBeCloseTo(1, 2);
      expect(Math.abs(ashraeSaturation(dewPointC(airC, percent)) / vapour - 1)).toBeLessThan(0.005);
    },
  );

  test('mistake 29: a surface at 19.0 °C over a dew point of 18.2 °C is held, whatever the readings', () => {
    const found = report({ surfaceTempC: 19, ambientTempC: 24, humidityPercent: 70, readings: all(mega(5000)) });
    expect(found).toMatchObject({
      verdict: 'information-only',
      remarks: [{ code: 'insulation.surface-near-dew-point', args: { surfaceTempC: 19 } }],
    });
    expect(found.dewPointC).toBeCloseTo(18.2, 1);
    expect(found.pairs[0]).toMatchObject({ verdict: 'information-only', byFigures: 'pass' });
  });

  test('a surface exactly 3 K above the dew point is no hold', () => {
    expect(report({ surfaceTempC: 23, ambientTempC: 20, humidityPercent: 100 }).remarks).toEqual([]);
    expect(report({ surfaceTempC: 22.9, ambientTempC: 20, humidityPercent: 100 }).verdict).toBe('information-only');
  });

  test('an unknown humidity is told, and holds nothing', () => {
    expect(report({ humidityPercent: null })).toMatchObject({
      verdict: 'pass',
      dewPointC: null,
      remarks: [{ code: 'insulation.dew-point-unknown' }],
    });
  });
});

describe('the pairs of a test', () => {
  test('neta-ir-matrix-4w (EC&M, busway troubleshooting tips): three phases, neutral and ground make 3 + 3 + 3 + 1 = 10', () => {
    expect(PAIRS).toEqual(['L1-L2', 'L1-L3', 'L2-L3', 'L1-N', 'L2-N', 'L3-N', 'L1-G', 'L2-G', 'L3-G', 'N-G']);
  });

  test('without a neutral there are six, and a double neutral adds none', () => {
    expect(pairsOf({ poles: 3, neutral: 'none' })).toEqual(['L1-L2', 'L1-L3', 'L2-L3', 'L1-G', 'L2-G', 'L3-G']);
    expect(pairsOf({ poles: 3, neutral: 'double' })).toHaveLength(10);
  });

  test('a missing pair is no pass', () => {
    const found = report({ readings: all(mega(2000)).slice(0, 9) });
    expect(found.verdict).toBe('incomplete');
    expect(pairOf(found, 'N-G')).toMatchObject({ verdict: 'incomplete', note: 'missing', reading: { kind: 'blank' } });
  });

  test('L3-L1 and L1-L3 are one pair; twice is refused, and so is a pair that the busway does not have', () => {
    const other = all(mega(2000)).map(({ pair, reading }) => ({ pair: pair === 'L1-L3' ? 'L3-L1' : pair, reading }));
    expect(report({ readings: other }).verdict).toBe('pass');
    expect(
      judgeInsulation(input({ readings: [...all(mega(2000)), { pair: 'L3-L1', reading: mega(1) }] })),
    ).toMatchObject({ refusal: { code: 'insulation.pair-twice', args: { pair: 'L1-L3' } } });
    expect(judgeInsulation(input({}, { conductors: { poles: 3, neutral: 'none' } }))).toMatchObject({
      refusal: { code: 'insulation.unknown-pair', args: { pair: 'L1-N' } },
    });
  });
});

describe('judging the readings', () => {
  test('1,000 MΩ at 28 °C over 70 ft is 1,439 MΩ at 20 °C and 100.7 MΩ for 1,000 ft: pass, with the working', () => {
    const found = report({ surfaceTempC: 28, readings: all(mega(1000)) });
    expect(found.verdict).toBe('pass');
    expect(found.pairs[0]?.at20Megohm).toBeCloseTo(1439, 0);
    expect(found.pairs[0]?.comparedMegohm).toBeCloseTo(100.7, 1);
    expect(found.pairs[0]?.working).toBe(
      '1000 MΩ; × 1.439 = 1,439 MΩ at 20 °C; × 0.07 = 100.7 MΩ for 1,000 ft; at least 100 MΩ asked',
    );
  });

  test('the same readings at 20 °C fail, and at 0 °C they fail by far', () => {
    expect(report({ readings: all(mega(1000)) }).verdict).toBe('fail');
    expect(report({ surfaceTempC: 0, readings: all(mega(1000)) }).pairs[0]?.comparedMegohm).toBeCloseTo(28, 9);
  });

  test('a reading equal to its limit passes', () => {
    expect(report({ readings: all(mega(400)) }, { length: 250 * FOOT }).verdict).toBe('pass');
    expect(report({ readings: all(mega(399.9)) }, { length: 250 * FOOT }).verdict).toBe('fail');
  });

  test('one failing pair fails the run, also beside a missing one', () => {
    const readings = allBut('L2-G', mega(50)).filter(({ pair }) => pair !== 'N-G');
    const found = report({ readings });
    expect(found.verdict).toBe('fail');
    expect(pairOf(found, 'L2-G')).toMatchObject({ verdict: 'fail', note: 'below-limit' });
    expect(pairOf(found, 'L1-G')).toMatchObject({ verdict: 'pass', note: null });
  });

  test('"> 5000" passes only when the bound itself clears the limit, and is kept as written', () => {
    const found = report({ readings: all(mega(5000, '>')) });
    expect(found.verdict).toBe('pass');
    expect(found.pairs[0]?.reading).toEqual({
      kind: 'value',
      comparator: '>',
      value: 5000,
      unit: 'MΩ',
      written: '5000',
    });
    expect(found.pairs[0]?.working).toContain('> 5000 MΩ; × 1 = > 5,000 MΩ at 20 °C');
    const short = report({ readings: allBut('L1-G', mega(1000, '>')) });
    expect(short.verdict).toBe('incomplete');
    expect(pairOf(short, 'L1-G')).toMatchObject({ verdict: 'incomplete', note: 'bound-below-limit' });
  });

  test('blank, not measured, meter fault and 0.00 are four different things', () => {
    const readings: Record<string, Reading> = {
      'L1-G': { kind: 'blank' },
      'L2-G': { kind: 'not-measured', reason: 'ceiling closed' },
      'L3-G': { kind: 'meter-fault', note: 'no steady reading' },
      'N-G': { kind: 'value', comparator: '=', value: 0, unit: 'MΩ', written: '0.00' },
    };
    const found = report({ readings: PAIRS.map((pair) => ({ pair, reading: readings[pair] ?? mega(2000) })) });
    expect(
      ['L1-G', 'L2-G', 'L3-G', 'N-G'].map((pair) => [pairOf(found, pair)?.verdict, pairOf(found, pair)?.note]),
    ).toEqual([
      ['incomplete', 'missing'],
      ['incomplete', 'not-measured'],
      ['incomplete', 'meter-fault'],
      ['fail', 'bond-not-lifted'],
    ]);
    expect(pairOf(found, 'L2-G')?.working).toBe('not measured: ceiling closed');
    expect(pairOf(found, 'N-G')?.working).toMatch(/^0\.00 MΩ;/);
  });

  test('mistake 24: 0.00 between neutral and ground is explained by the bond; between a phase and ground it just fails', () => {
    const zero: Reading = { kind: 'value', comparator: '=', value: 0, unit: 'MΩ', written: '0.00' };
    expect(pairOf(report({ readings: allBut('N-G', zero) }), 'N-G')?.note).toBe('bond-not-lifted');
    expect(pairOf(report({ readings: allBut('L1-G', zero) }), 'L1-G')?.note).toBe('below-limit');
  });

  test('the guide prints no correction, so one may lower a reading and never lift it', () => {
    const guide = { rule: 'busway-guide' as const };
    expect(report({ ...guide, surfaceTempC: 28, readings: all(mega(1.2)) }).verdict).toBe('fail');
    expect(report({ ...guide, surfaceTempC: 0, humidityPercent: null, readings: all(mega(3)) }).verdict).toBe('fail');
    expect(report({ ...guide, surfaceTempC: 0, humidityPercent: null, readings: all(mega(3.6)) }).verdict).toBe('pass');
  });

  test('the IEC limit holds as measured, without a temperature', () => {
    const iec = { rule: 'iec-60364-6' as const, testVoltageV: 500, surfaceTempC: null };
    expect(report({ ...iec, readings: all(mega(1)) })).toMatchObject({ verdict: 'pass' });
    expect(report({ ...iec, readings: all(mega(0.99)) })).toMatchObject({ verdict: 'fail' });
  });

  test('a reading that must be corrected and has no surface temperature proves nothing', () => {
    const found = report({ surfaceTempC: null });
    expect(found).toMatchObject({
      verdict: 'incomplete',
      factor: null,
      remarks: [{ code: 'insulation.temperature-missing' }],
    });
    expect(found.pairs[0]).toMatchObject({ note: 'no-temperature', comparedMegohm: null });
  });

  test('kilohms and gigohms are brought to megohms, and the reading stays in its unit', () => {
    const giga: Reading = { kind: 'value', comparator: '=', value: 1.5, unit: 'GΩ', written: '1.5' };
    const found = pairOf(report({ readings: allBut('L1-L2', giga) }), 'L1-L2');
    expect(found).toMatchObject({ megohm: 1500, verdict: 'pass', reading: giga });
    expect(found?.working).toMatch(/^1\.5 GΩ = 1,500 MΩ;/);
    const kilo: Reading = { kind: 'value', comparator: '=', value: 500, unit: 'kΩ', written: '500' };
    expect(pairOf(report({ readings: allBut('L1-L2', kilo) }), 'L1-L2')).toMatchObject({
      megohm: 0.5,
      verdict: 'fail',
    });
  });
});

describe('a test is refused', () => {
  test("at another voltage than the table's", () => {
    expect(judgeInsulation(input({ testVoltageV: 500 }))).toMatchObject({
      refusal: { code: 'insulation.test-voltage', args: { neededV: 1000, usedV: 500 } },
    });
  });

  test('outside the temperatures of the table, with the reading as °F offered', () => {
    const found = judgeInsulation(input({ surfaceTempC: 120 }));
    expect(found).toMatchObject({
      refusal: { code: 'insulation.temperature-outside', args: { tempC: 120, leastC: -10, greatestC: 110 } },
    });
    expect(
      !found.ok && found.refusal.code === 'insulation.temperature-outside' && found.refusal.args.fahrenheitAsC,
    ).toBeCloseTo(48.9, 1);
  });

  test('with a humidity that is none', () => {
    expect(judgeInsulation(input({ humidityPercent: 0 }))).toMatchObject({
      refusal: { code: 'insulation.humidity-outside' },
    });
  });
});

describe('an instrument past its calibration (mistake 30)', () => {
  test('makes the test information only, with the days over; what the figures come to stays to be seen', () => {
    const found = report({
      instrument: { id: 'T-07', calibrationDue: '2026-05-09', topRange: null },
      readings: allBut('L1-G', mega(5)),
    });
    expect(found).toMatchObject({
      verdict: 'information-only',
      remarks: [{ code: 'tool.calibration-expired', args: { id: 'T-07', daysOver: 3 } }],
    });
    expect(pairOf(found, 'L1-G')).toMatchObject({ verdict: 'information-only', byFigures: 'fail' });
  });

  test('so does one whose due day nobody knows', () => {
    expect(report({ instrument: { id: 'T-07', calibrationDue: null, topRange: null } })).toMatchObject({
      verdict: 'information-only',
      remarks: [{ code: 'tool.calibration-unknown' }],
    });
  });

  test('the due day itself is in date', () => {
    expect(report({ instrument: { id: 'T-07', calibrationDue: '2026-05-12', topRange: null } }).verdict).toBe('pass');
  });
});

describe('questions that a sheet raises', () => {
  test('mistake 28: 82 typed for °C is probably 82 °F = 27.8 °C', () => {
    const [question] = report({ surfaceTempC: 82 }).questions;
    expect(question).toMatchObject({ code: 'temperature-high', args: { tempC: 82 } });
    expect(question?.code === 'temperature-high' && question.args.fahrenheitAsC).toBeCloseTo(27.8, 1);
    expect(report({ surfaceTempC: 50 }).questions).toEqual([]);
  });

  test('mistake 27: 100 ft left on the sheet of a 70 ft run would make 136.7 of what is 95.7; the record counts', () => {
    const found = report({ lengthTyped: 100 * FOOT, readings: allBut('L1-G', mega(1367)) });
    const [question] = found.questions;
    expect(question).toMatchObject({ code: 'length-differs', args: { typed: 100 * FOOT, recorded: 70 * FOOT } });
    expect(question?.code === 'length-differs' && question.args.byTypedMegohm).toBeCloseTo(136.7, 1);
    expect(question?.code === 'length-differs' && question.args.byRecordedMegohm).toBeCloseTo(95.7, 1);
    expect(pairOf(found, 'L1-G')).toMatchObject({ verdict: 'fail' });
    expect(found.verdict).toBe('fail');
  });

  test('a length within half a foot of the record is the same length', () => {
    expect(report({ lengthTyped: 70.5 * FOOT }).questions).toEqual([]);
    expect(report({ lengthTyped: 70.6 * FOOT }).questions).toHaveLength(1);
  });

  test('mistake 26: 0.95 GΩ among megohms is asked as 950 MΩ', () => {
    const giga: Reading = { kind: 'value', comparator: '=', value: 0.95, unit: 'GΩ', written: '0.95' };
    expect(report({ readings: allBut('L2-N', giga) }).questions).toEqual([
      { code: 'unit-mix', args: { usual: 'MΩ', odd: [{ pair: 'L2-N', written: '0.95', unit: 'GΩ', megohm: 950 }] } },
    ]);
  });

  test('mistake 25: 9999 as a figure asks for the meter’s top range; as a bound it does not', () => {
    expect(report({ readings: allBut('L1-L2', mega(9999)) }).questions).toMatchObject([
      { code: 'over-range-code', args: { readings: [{ pair: 'L1-L2', written: '9999' }] } },
    ]);
    expect(report({ readings: allBut('L1-L2', mega(9999, '>')) }).questions).toEqual([]);
  });
});

describe('what a person types into a box of the sheet', () => {
  const read = (typed: string, topRange: { value: number; unit: 'GΩ' } | null = null) =>
    parseReading(typed, 'MΩ', topRange);

  test.each([
    ['1250', { kind: 'value', comparator: '=', value: 1250, unit: 'MΩ', written: '1250' }],
    ['1,250', { kind: 'value', comparator: '=', value: 1250, unit: 'MΩ', written: '1250' }],
    ['> 5000', { kind: 'value', comparator: '>', value: 5000, unit: 'MΩ', written: '5000' }],
    ['>5.0G', { kind: 'value', comparator: '>', value: 5, unit: 'GΩ', written: '5.0' }],
    ['0.95 GΩ', { kind: 'value', comparator: '=', value: 0.95, unit: 'GΩ', written: '0.95' }],
    ['0.00', { kind: 'value', comparator: '=', value: 0, unit: 'MΩ', written: '0.00' }],
    ['500 kΩ', { kind: 'value', comparator: '=', value: 500, unit: 'kΩ', written: '500' }],
    ['', { kind: 'blank' }],
    ['  ', { kind: 'blank' }],
    ['not measured', { kind: 'not-measured', reason: null }],
    ['meter fault', { kind: 'meter-fault', note: null }],
  ])('"%s" is read as it is meant', (typed, reading) => {
    expect(read(typed)).toEqual({ ok: true, reading });
  });

  test('mistake 25: OL asks for the top range, and is the bound "> top range" where that is known', () => {
    expect(read('OL')).toEqual({ ok: false, fault: { code: 'reading.over-range', args: { written: 'OL' } } });
    expect(read('OL', { value: 10, unit: 'GΩ' })).toEqual({
      ok: true,
      reading: { kind: 'value', comparator: '>', value: 10, unit: 'GΩ', written: '10' },
    });
  });

  test.each(['-5', '< 5', '5 V', '1e3', 'ok', '1.2.3', '1,25'])('"%s" is no reading', (typed) => {
    expect(read(typed)).toMatchObject({ ok: false, fault: { code: 'reading.not-a-number' } });
  });
});

test('whatever stands on the sheet, a pass means that every pair of the busway was measured and clears the limit', () => {
  const reading = fc.oneof(
    fc.record({
      kind: fc.constant('value' as const),
      comparator: fc.constantFrom('=' as const, '>' as const),
      value: fc.double({ min: 0, max: 5000, noNaN: true }),
      unit: fc.constantFrom('MΩ' as const, 'GΩ' as const, 'kΩ' as const),
      written: fc.constant('1'),
    }),
    fc.constant({ kind: 'blank' as const }),
    fc.constant({ kind: 'not-measured' as const, reason: null }),
  );
  const IN_MEGOHM = { MΩ: 1, GΩ: 1000, kΩ: 0.001 };
  fc.assert(
    fc.property(
      fc.array(reading, { minLength: 10, maxLength: 10 }),
      fc.integer({ min: -10, max: 110 }),
      fc.integer({ min: 1, max: 400 }),
      (readings, surfaceTempC, feet) => {
        const found = report(
          {
            surfaceTempC,
            humidityPercent: null,
            readings: PAIRS.map((pair, index) => ({ pair, reading: readings[index] ?? { kind: 'blank' } })),
          },
          { length: feet * FOOT },
        );
        const factor = temperatureFactor(surfaceTempC) ?? Number.NaN;
        const clears = readings.map(
          (entry) =>
            entry.kind === 'value' && (entry.value * IN_MEGOHM[entry.unit] * factor * feet) / 1000 >= 100 * (1 + 1e-12),
        );
        const near = readings.some(
          (entry) =>
            entry.kind === 'value' && Math.abs((entry.value * IN_MEGOHM[entry.unit] * factor * feet) / 1e5 - 1) < 1e-9,
        );
        fc.pre(!near);
        expect(found.verdict === 'pass').toBe(clears.every(Boolean));
      },
    ),
  );
});
