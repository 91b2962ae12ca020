import { calibrationRemark } from './calibration.ts';
import type { ConductorSet } from './conductors.ts';
import type { Instant } from './instant.ts';
import { type Criterion, type CriterionInput, insulationCriterion } from './insulation/criterion.ts';
import { DEW_POINT_MARGIN_K, dewPointC as dewPoint } from './insulation/dew-point.ts';
import { judgePair, type PairResult } from './insulation/pair-result.ts';
import { pairNamed, pairsOf } from './insulation/pairs.ts';
import { fahrenheitToC, insulationQuestions, type Question } from './insulation/questions.ts';
import type { PairReading } from './insulation/reading.ts';
import { GREATEST_TEMP_C, LEAST_TEMP_C, temperatureFactor } from './insulation/temperature-factor.ts';
import type { Verdict } from './insulation/verdict.ts';
import type { InsulationTestBody } from './record.ts';
import type { InsulationRefusal } from './refusal.ts';
import type { Remark } from './remark.ts';

export interface InsulationInput extends Omit<CriterionInput, 'rule'> {
  readonly test: Pick<
    InsulationTestBody,
    | 'rule'
    | 'testVoltageV'
    | 'instrument'
    | 'surfaceTempC'
    | 'ambientTempC'
    | 'humidityPercent'
    | 'lengthTyped'
    | 'readings'
  >;
  readonly conductors: ConductorSet;
  readonly at: Instant;
  readonly timeZone: string | null;
}

export interface InsulationReport {
  readonly criterion: Criterion;
  /** Factor to 20 °C; null without a surface temperature. */
  readonly factor: number | null;
  readonly dewPointC: number | null;
  readonly pairs: readonly (Omit<PairResult, 'verdict'> & {
    readonly verdict: Verdict;
    /** What the figures alone come to, also where the test is information only. */
    readonly byFigures: PairResult['verdict'];
  })[];
  readonly verdict: Verdict;
  readonly questions: readonly Question[];
  readonly remarks: readonly Remark[];
}

export type InsulationResult =
  | { readonly ok: true; readonly report: InsulationReport }
  | { readonly ok: false; readonly refusal: InsulationRefusal };

/**
 * Judges an insulation resistance test of one run, pair by pair and as a whole, with its working. Readings are never changed.
 * All pairs must be there; one that fails fails the run. An instrument past its calibration on the day of the site, or a
 * surface below dew point + 3 K, makes all of it information only.
 *
 * Refused: wrong test voltage, a rating or a temperature outside the tables, a looser project limit, a pair that the busway
 * does not have or that comes twice. Sources: the criterion's. Example: 1,000 MΩ at 28 °C over 70 ft is 100.7 MΩ for
 * 1,000 ft at 20 °C, and passes 100 MΩ.
 */
export function judgeInsulation(input: InsulationInput): InsulationResult {
  const { test } = input;
  const found = insulationCriterion({ ...input, rule: test.rule });
  if (!found.ok) return found;
  const { criterion } = found;
  const fault =
    voltageFault(input, criterion) ??
    temperatureFault(test.surfaceTempC) ??
    humidityFault(test.humidityPercent) ??
    pairsFault(input);
  if (fault !== null) return { ok: false, refusal: fault };
  return { ok: true, report: reportOf(input, criterion) };
}

function voltageFault(
  { test }: InsulationInput,
  { testVoltageV: neededV, sources }: Criterion,
): InsulationRefusal | null {
  if (test.testVoltageV === neededV) return null;
  return { code: 'insulation.test-voltage', args: { neededV, usedV: test.testVoltageV, source: sources[0] ?? '' } };
}

function temperatureFault(tempC: number | null): InsulationRefusal | null {
  if (tempC === null || temperatureFactor(tempC) !== null) return null;
  const args = { tempC, fahrenheitAsC: fahrenheitToC(tempC), leastC: LEAST_TEMP_C, greatestC: GREATEST_TEMP_C };
  return { code: 'insulation.temperature-outside', args };
}

function humidityFault(percent: number | null): InsulationRefusal | null {
  if (percent === null || (percent > 0 && percent <= 100)) return null;
  return { code: 'insulation.humidity-outside', args: { percent } };
}

function pairsFault({ test, conductors }: InsulationInput): InsulationRefusal | null {
  const pairs = pairsOf(conductors);
  const seen = new Set<string>();
  for (const { pair: written } of test.readings) {
    const pair = pairNamed(written, pairs);
    if (pair === null) return { code: 'insulation.unknown-pair', args: { pair: written, pairs } };
    if (seen.has(pair)) return { code: 'insulation.pair-twice', args: { pair } };
    seen.add(pair);
  }
  return null;
}

function reportOf(input: InsulationInput, criterion: Criterion): InsulationReport {
  const { test, conductors, length } = input;
  const factor = test.surfaceTempC === null ? null : temperatureFactor(test.surfaceTempC);
  const pairs = pairsOf(conductors);
  const byPair = new Map(test.readings.map(({ pair, reading }) => [pairNamed(pair, pairs), reading]));
  const results = pairs.map((pair) => judgePair(pair, byPair.get(pair) ?? { kind: 'blank' }, factor, criterion));
  const air = airOf(test);
  const holds = [...calibrationHolds(input), ...dewPointHolds(test.surfaceTempC, air)];
  const verdict = holds.length > 0 ? 'information-only' : wholeVerdict(results);
  return {
    criterion,
    factor,
    dewPointC: air,
    pairs: results.map((result) => ({
      ...result,
      byFigures: result.verdict,
      verdict: holds.length > 0 ? 'information-only' : result.verdict,
    })),
    verdict,
    questions: insulationQuestions({ ...test, length, readings: namedReadings(test.readings, pairs) }),
    remarks: [...holds, ...missingRemarks(test, criterion, air)],
  };
}

function namedReadings(readings: readonly PairReading[], pairs: readonly string[]): readonly PairReading[] {
  return readings.map(({ pair, reading }) => ({ pair: pairNamed(pair, pairs) ?? pair, reading }));
}

function wholeVerdict(results: readonly PairResult[]): Verdict {
  if (results.some(({ verdict }) => verdict === 'fail')) return 'fail';
  return results.some(({ verdict }) => verdict === 'incomplete') ? 'incomplete' : 'pass';
}

function airOf({ ambientTempC, humidityPercent }: InsulationInput['test']): number | null {
  return ambientTempC === null || humidityPercent === null ? null : dewPoint(ambientTempC, humidityPercent);
}

function calibrationHolds({ test, at, timeZone }: InsulationInput): Remark[] {
  const remark = calibrationRemark({ id: test.instrument.id, due: test.instrument.calibrationDue }, at, timeZone);
  return remark === null ? [] : [remark];
}

function dewPointHolds(surfaceTempC: number | null, dewPointC: number | null): Remark[] {
  if (surfaceTempC === null || dewPointC === null) return [];
  const leastC = dewPointC + DEW_POINT_MARGIN_K;
  return surfaceTempC < leastC
    ? [{ code: 'insulation.surface-near-dew-point', args: { surfaceTempC, dewPointC, leastC } }]
    : [];
}

function missingRemarks(
  { surfaceTempC }: InsulationInput['test'],
  { compares }: Criterion,
  air: number | null,
): Remark[] {
  const noTemperature = surfaceTempC === null && compares !== 'as-read';
  return [
    ...(noTemperature ? [{ code: 'insulation.temperature-missing' as const, args: {} }] : []),
    ...(air === null ? [{ code: 'insulation.dew-point-unknown' as const, args: {} }] : []),
  ];
}
