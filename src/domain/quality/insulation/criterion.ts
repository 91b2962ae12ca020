import { BUSWAY_GUIDE_INSULATION } from '../../tables/busway-guide.ts';
import { IEC_60364_6_INSULATION } from '../../tables/iec-60364-6.ts';
import { NETA_100_1, NETA_100_14_SOLID, NETA_BUSWAY_LENGTH } from '../../tables/neta-ats.ts';
import { FOOT, type Length } from '../../units/length.ts';
import type { InsulationRefusal } from '../refusal.ts';
import { lengthText, megohmText } from './print.ts';

export const INSULATION_RULES = ['acceptance-1000ft', 'busway-guide', 'iec-60364-6'] as const;
export type InsulationRule = (typeof INSULATION_RULES)[number];

/** A limit of the project's own, on the rule's basis: for a nominal 1 000 ft on the acceptance rule, else of the run. */
export interface ProjectLimit {
  readonly megohm: number;
  readonly source: string;
}

export interface CriterionInput {
  readonly rule: InsulationRule;
  /** Rated voltage of the busway, V: rows of the acceptance table. */
  readonly ratedVoltageV: number;
  /** Nominal line-to-line voltage of the circuit, V: rows of the IEC table. */
  readonly nominalVoltageV: number;
  readonly length: Length;
  readonly projectLimit: ProjectLimit | null;
}

/**
 * What a reading is held against. `compares`: `corrected` to 20 °C; `lesser` of read and corrected, because the guide prints
 * no correction, so that one may lower a reading and never lift it; `as-read`, because the IEC limit holds as measured.
 */
export interface Criterion {
  readonly rule: InsulationRule;
  readonly testVoltageV: number;
  /** Least megohms on the rule's own basis, the project's stricter one included. */
  readonly limitMegohm: number;
  /** Multiplies a reading of this run to the rule's basis: length in ft / 1 000 on the acceptance rule, else 1. */
  readonly lengthFactor: number;
  readonly compares: 'corrected' | 'lesser' | 'as-read';
  /** What a meter on this run must show at 20 °C. */
  readonly neededMegohm: number;
  readonly text: string;
  readonly sources: readonly string[];
}

export type CriterionResult =
  | { readonly ok: true; readonly criterion: Criterion }
  | { readonly ok: false; readonly refusal: InsulationRefusal };

/**
 * The criterion of a run's insulation test by the project's rule. Refused: a rating outside the table's rows, a run without a
 * length, and a project limit looser than the rule's.
 *
 * Example: 70 ft of 600 V busway must show 1,429 MΩ by the acceptance rule and 1.43 MΩ by the busway guide.
 */
export function insulationCriterion(input: CriterionInput): CriterionResult {
  if (!(input.length > 0)) return { ok: false, refusal: { code: 'insulation.no-length', args: {} } };
  const row = acceptanceRow(input.ratedVoltageV);
  if (row === null && input.rule !== 'iec-60364-6') return { ok: false, refusal: outside(input.ratedVoltageV) };
  const plain = printedLimit(input, row);
  const { projectLimit } = input;
  if (projectLimit !== null && projectLimit.megohm < plain.limitMegohm) {
    const args = { projectMegohm: projectLimit.megohm, ruleMegohm: plain.limitMegohm, source: projectLimit.source };
    return { ok: false, refusal: { code: 'insulation.limit-looser', args } };
  }
  return { ok: true, criterion: withText(plain, input) };
}

type AcceptanceRow = (typeof NETA_100_1.rows)[number];
type Printed = Pick<Criterion, 'rule' | 'testVoltageV' | 'limitMegohm' | 'lengthFactor' | 'compares' | 'sources'>;

/** The row of the least rating that covers the busway's. */
function acceptanceRow(ratedV: number): AcceptanceRow | null {
  return NETA_100_1.rows.find(({ ratingV }) => ratingV >= ratedV) ?? null;
}

function outside(ratedV: number): InsulationRefusal {
  const greatestV = Math.max(...NETA_100_1.rows.map(({ ratingV }) => ratingV));
  return { code: 'insulation.rating-outside', args: { ratedV, greatestV, source: NETA_100_1.source } };
}

function printedLimit({ rule, length, nominalVoltageV }: CriterionInput, row: AcceptanceRow | null): Printed {
  const feet = length / FOOT;
  const iec = IEC_60364_6_INSULATION.rows.find(
    ({ upToV, aboveV }) => aboveV !== null && nominalVoltageV <= (upToV ?? Infinity),
  );
  switch (rule) {
    case 'acceptance-1000ft':
      return {
        rule,
        testVoltageV: known(row).testVoltageV,
        limitMegohm: known(row).leastMegohm,
        lengthFactor: feet / NETA_BUSWAY_LENGTH.referenceFt,
        compares: 'corrected',
        sources: [cited(NETA_100_1), cited(NETA_BUSWAY_LENGTH), cited(NETA_100_14_SOLID)],
      };
    case 'busway-guide':
      return {
        rule,
        testVoltageV: known(row).testVoltageV,
        limitMegohm: BUSWAY_GUIDE_INSULATION.megohmFeet / feet,
        lengthFactor: 1,
        compares: 'lesser',
        sources: [cited(BUSWAY_GUIDE_INSULATION), `test voltage: ${cited(NETA_100_1)}`, cited(NETA_100_14_SOLID)],
      };
    case 'iec-60364-6':
      return {
        rule,
        testVoltageV: known(iec).testVoltageV,
        limitMegohm: known(iec).leastMegohm,
        lengthFactor: 1,
        compares: 'as-read',
        sources: [cited(IEC_60364_6_INSULATION)],
      };
  }
}

function known<T>(row: T | null | undefined): T {
  if (row === null || row === undefined) throw new Error('a criterion was asked of a table that has no row for it');
  return row;
}

function cited({ source, edition }: { readonly source: string; readonly edition: string }): string {
  return `${source} (${edition})`;
}

function withText(plain: Printed, { length, projectLimit }: CriterionInput): Criterion {
  const limitMegohm = projectLimit?.megohm ?? plain.limitMegohm;
  const neededMegohm = limitMegohm / plain.lengthFactor;
  const own =
    projectLimit === null
      ? ''
      : ` The project asks ${megohmText(projectLimit.megohm)} (${projectLimit.source}) instead of ${megohmText(plain.limitMegohm)}.`;
  const text = `${ruleText(plain.rule, length, limitMegohm, neededMegohm)} Test voltage ${plain.testVoltageV} V DC.${own}`;
  const sources = projectLimit === null ? plain.sources : [...plain.sources, projectLimit.source];
  return { ...plain, limitMegohm, neededMegohm, text, sources };
}

function ruleText(rule: InsulationRule, length: Length, limit: number, needed: number): string {
  switch (rule) {
    case 'acceptance-1000ft':
      return `Acceptance rule: each reading corrected to 20 °C and × length / 1,000 ft is at least ${megohmText(limit)}; over ${lengthText(length)} a meter must show ${megohmText(needed)} at 20 °C.`;
    case 'busway-guide':
      return `Busway guide's rule: each reading is at least 100 / length in ft = ${megohmText(limit)} over ${lengthText(length)}. The guide prints no temperature correction, so the lesser of the reading and its value at 20 °C is held against it.`;
    case 'iec-60364-6':
      return `IEC rule: each reading as measured is at least ${megohmText(limit)}; a legal minimum, not an acceptance target.`;
  }
}
