import type { Criterion } from './criterion.ts';
import type { Pair } from './pairs.ts';
import { figure, megohmText } from './print.ts';
import { megohms, type Reading } from './reading.ts';
import type { Verdict } from './verdict.ts';

export type PairNote =
  | 'missing'
  | 'not-measured'
  | 'meter-fault'
  | 'no-temperature'
  | 'bound-below-limit'
  | 'below-limit'
  | 'bond-not-lifted';

export interface PairResult {
  readonly pair: Pair;
  /** As it stands on the sheet; a pair that the sheet lacks is a blank. */
  readonly reading: Reading;
  readonly megohm: number | null;
  readonly at20Megohm: number | null;
  /** What is held against the limit, on the rule's basis. */
  readonly comparedMegohm: number | null;
  readonly verdict: Exclude<Verdict, 'information-only'>;
  readonly note: PairNote | null;
  /** The working in one line, for screen and print. */
  readonly working: string;
}

/**
 * Judges one pair. A bound (`> 5000`) passes only when the bound itself clears the limit; one that does not is incomplete,
 * never a pass and never a fail. Blank, not measured and meter fault are incomplete.
 */
export function judgePair(pair: Pair, reading: Reading, factor: number | null, criterion: Criterion): PairResult {
  if (reading.kind !== 'value') return unmeasured(pair, reading);
  const megohm = megohms(reading);
  const at20Megohm = factor === null ? null : megohm * factor;
  const basis = basisOf(megohm, at20Megohm, criterion);
  if (basis === null) {
    return {
      pair,
      reading,
      megohm,
      at20Megohm,
      comparedMegohm: null,
      verdict: 'incomplete',
      note: 'no-temperature',
      working: `${written(reading)}; surface temperature not measured, so it cannot be brought to 20 °C`,
    };
  }
  const comparedMegohm = basis * criterion.lengthFactor;
  const judged = judge(pair, reading, comparedMegohm >= criterion.limitMegohm);
  return {
    pair,
    reading,
    megohm,
    at20Megohm,
    comparedMegohm,
    ...judged,
    working: workingOf(reading, { megohm, factor, at20Megohm, comparedMegohm }, criterion),
  };
}

function unmeasured(pair: Pair, reading: Exclude<Reading, { readonly kind: 'value' }>): PairResult {
  const notes = { blank: 'missing', 'not-measured': 'not-measured', 'meter-fault': 'meter-fault' } as const;
  const words = { blank: 'no reading', 'not-measured': 'not measured', 'meter-fault': 'meter fault' } as const;
  const said = reading.kind === 'not-measured' ? reading.reason : reading.kind === 'meter-fault' ? reading.note : null;
  const working = said === null ? words[reading.kind] : `${words[reading.kind]}: ${said}`;
  return {
    pair,
    reading,
    megohm: null,
    at20Megohm: null,
    comparedMegohm: null,
    verdict: 'incomplete',
    note: notes[reading.kind],
    working,
  };
}

function basisOf(megohm: number, at20: number | null, { compares }: Criterion): number | null {
  switch (compares) {
    case 'as-read':
      return megohm;
    case 'corrected':
      return at20;
    case 'lesser':
      return at20 === null ? null : Math.min(megohm, at20);
  }
}

type Value = Extract<Reading, { readonly kind: 'value' }>;

function judge(pair: Pair, reading: Value, clears: boolean): Pick<PairResult, 'verdict' | 'note'> {
  if (clears) return { verdict: 'pass', note: null };
  if (reading.comparator === '>') return { verdict: 'incomplete', note: 'bound-below-limit' };
  return { verdict: 'fail', note: pair === 'N-G' && reading.value === 0 ? 'bond-not-lifted' : 'below-limit' };
}

function written({ comparator, written: digits, unit }: Value): string {
  return `${comparator === '>' ? '> ' : ''}${digits} ${unit}`;
}

interface Steps {
  readonly megohm: number;
  readonly factor: number | null;
  readonly at20Megohm: number | null;
  readonly comparedMegohm: number;
}

function workingOf(
  reading: Value,
  { megohm, factor, at20Megohm, comparedMegohm }: Steps,
  criterion: Criterion,
): string {
  const sign = reading.comparator === '>' ? '> ' : '';
  const read = reading.unit === 'MΩ' ? written(reading) : `${written(reading)} = ${sign}${megohmText(megohm)}`;
  const at20 =
    factor === null || at20Megohm === null ? '' : `; × ${figure(factor)} = ${sign}${megohmText(at20Megohm)} at 20 °C`;
  const scaled =
    criterion.lengthFactor === 1
      ? ''
      : `; × ${figure(criterion.lengthFactor)} = ${sign}${megohmText(comparedMegohm)} for 1,000 ft`;
  return `${read}${at20}${scaled}; at least ${megohmText(criterion.limitMegohm)} asked`;
}
