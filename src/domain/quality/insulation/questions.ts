import { FOOT, type Length } from '../../units/length.ts';
import type { Pair } from './pairs.ts';
import { megohms, type PairReading, type Reading, type ResistanceUnit } from './reading.ts';
import { GREATEST_TEMP_C, LEAST_TEMP_C } from './temperature-factor.ts';

export const QUESTION_CODES = ['temperature-high', 'length-differs', 'unit-mix', 'over-range-code'] as const;
export type QuestionCode = (typeof QUESTION_CODES)[number];

/** A figure that is possible and more likely a slip: the person corrects it, or says that it stands. */
export type Question =
  | { readonly code: 'temperature-high'; readonly args: { readonly tempC: number; readonly fahrenheitAsC: number } }
  | {
      readonly code: 'length-differs';
      readonly args: {
        readonly typed: Length;
        readonly recorded: Length;
        /** The lowest reading for 1 000 ft by either length, MΩ as read; null without a reading. */
        readonly byTypedMegohm: number | null;
        readonly byRecordedMegohm: number | null;
      };
    }
  | {
      readonly code: 'unit-mix';
      readonly args: {
        readonly usual: ResistanceUnit;
        readonly odd: readonly { pair: Pair; written: string; unit: ResistanceUnit; megohm: number }[];
      };
    }
  | {
      readonly code: 'over-range-code';
      readonly args: { readonly readings: readonly { pair: Pair; written: string; unit: ResistanceUnit }[] };
    };

export interface QuestionInput {
  readonly surfaceTempC: number | null;
  readonly lengthTyped: Length | null;
  readonly length: Length;
  readonly readings: readonly PairReading[];
}

/** De-energised busway indoors is not this warm: above it a figure in °F is likelier than the temperature. */
const UNLIKELY_TEMP_C = 50;

/**
 * What the sheet of a test makes doubtful, in a fixed order.
 *
 * Example: a surface temperature of 82 asks whether 82 °F = 27.8 °C was meant.
 */
export function insulationQuestions(input: QuestionInput): readonly Question[] {
  const found = [
    temperatureQuestion(input),
    lengthQuestion(input),
    unitQuestion(input.readings),
    overRangeQuestion(input.readings),
  ];
  return found.filter((question) => question !== null);
}

export function fahrenheitToC(tempF: number): number {
  return ((tempF - 32) * 5) / 9;
}

function temperatureQuestion({ surfaceTempC: tempC }: QuestionInput): Question | null {
  if (tempC === null || tempC <= UNLIKELY_TEMP_C || tempC > GREATEST_TEMP_C || tempC < LEAST_TEMP_C) return null;
  return { code: 'temperature-high', args: { tempC, fahrenheitAsC: fahrenheitToC(tempC) } };
}

// Sheets are written to the nearest whole foot, so less than half of one is the same length.
const LENGTH_SLACK: Length = FOOT / 2;

function lengthQuestion({ lengthTyped: typed, length: recorded, readings }: QuestionInput): Question | null {
  if (typed === null || Math.abs(typed - recorded) <= LENGTH_SLACK) return null;
  const values = readings.flatMap(({ reading }) => (reading.kind === 'value' ? [megohms(reading)] : []));
  const lowest = values.length > 0 ? Math.min(...values) : null;
  const by = (length: Length) => (lowest === null ? null : (lowest * length) / FOOT / 1000);
  return {
    code: 'length-differs',
    args: { typed, recorded, byTypedMegohm: by(typed), byRecordedMegohm: by(recorded) },
  };
}

type Value = Extract<Reading, { readonly kind: 'value' }>;

function valuesOf(readings: readonly PairReading[]): (Value & { readonly pair: Pair })[] {
  return readings.flatMap(({ pair, reading }) => (reading.kind === 'value' ? [{ pair, ...reading }] : []));
}

function unitQuestion(readings: readonly PairReading[]): Question | null {
  const values = valuesOf(readings);
  const counts = new Map<ResistanceUnit, number>();
  for (const { unit } of values) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  const [usual] = [...counts].sort(([, a], [, b]) => b - a);
  if (usual === undefined || counts.size < 2) return null;
  const odd = values.filter(({ unit }) => unit !== usual[0]);
  return {
    code: 'unit-mix',
    args: {
      usual: usual[0],
      odd: odd.map((value) => ({ pair: value.pair, written: value.written, unit: value.unit, megohm: megohms(value) })),
    },
  };
}

/** Meters show a row of nines when the resistance passes their range. */
function overRangeQuestion(readings: readonly PairReading[]): Question | null {
  const nines = valuesOf(readings).filter(
    ({ comparator, written }) => comparator === '=' && /^9{4,}$/.test(written.replace('.', '')),
  );
  if (nines.length === 0) return null;
  return {
    code: 'over-range-code',
    args: { readings: nines.map(({ pair, written, unit }) => ({ pair, written, unit })) },
  };
}
