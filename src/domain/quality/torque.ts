import { nmFromLbfFt } from '../units/quantities.ts';
import type { TorqueReading } from './record.ts';

/** A torque in N·m. `torqueNm({ value: 15, unit: 'lbf-ft' }) = 20.337`. */
export function torqueNm({ value, unit }: Pick<TorqueReading, 'value' | 'unit'>): number {
  return unit === 'Nm' ? value : nmFromLbfFt(value);
}

/**
 * The tolerance that a step of the sheet states in its own words, as a fraction of the torque; null when it states none,
 * and then none is assumed. Reads "±10 %", "+/- 10%" and "± 2 N·m" (which needs the stated torque).
 *
 * Example: `statedTolerance('upper clamp 20 N·m ± 10 %', 20) = 0.1`.
 */
export function statedTolerance(text: string, statedNm: number): number | null {
  const found =
    /(?:±|\+\s*\/\s*[-−–])\s*(\d+(?:[.,]\d+)?)\s*(%|N\s*[·.⋅]?\s*m\b|lbf?[\s·.⋅-]*ft\b|ft[\s·.⋅-]*lbf?\b)/i.exec(text);
  if (found === null) return null;
  const amount = Number((found[1] ?? '').replace(',', '.'));
  const unit = found[2] ?? '';
  if (unit === '%') return amount / 100;
  const inNm = /^n/i.test(unit) ? amount : nmFromLbfFt(amount);
  return inNm / statedNm;
}

export interface TorqueJudged {
  readonly appliedNm: number;
  readonly statedNm: number | null;
  /** null where the sheet states no torque. */
  readonly differencePercent: number | null;
  /** `unjudged`: the sheet states no torque, or a torque without a tolerance and the two are not the same. */
  readonly verdict: 'as-stated' | 'within' | 'outside' | 'unjudged';
  readonly leastNm: number | null;
  readonly greatestNm: number | null;
}

// Not a tolerance: what converting between units and writing one decimal costs (20 N·m is written 14.8 lbf·ft, 0.3 % off).
const ROUNDING = 0.005;
const SLACK_NM = 1e-9;

/**
 * Sets a torque against the sheet's. With a tolerance in the step's words it is within or outside; without one it is
 * `as-stated` when the two are the same but for the rounding of a conversion, and otherwise `unjudged`: kept, shown with its
 * difference, and left to the person who accepts the joint, because no tolerance is assumed where the sheet states none.
 */
export function judgeTorque(torque: TorqueReading, stepText: string, statedNm: number | null): TorqueJudged {
  const appliedNm = torqueNm(torque);
  if (statedNm === null) {
    return { appliedNm, statedNm, differencePercent: null, verdict: 'unjudged', leastNm: null, greatestNm: null };
  }
  const difference = appliedNm - statedNm;
  const tolerance = statedTolerance(stepText, statedNm);
  const shown = { appliedNm, statedNm, differencePercent: (100 * difference) / statedNm };
  if (tolerance === null) {
    const verdict = Math.abs(difference) <= ROUNDING * statedNm ? 'as-stated' : 'unjudged';
    return { ...shown, verdict, leastNm: null, greatestNm: null };
  }
  const verdict = Math.abs(difference) <= tolerance * statedNm + SLACK_NM ? 'within' : 'outside';
  return { ...shown, verdict, leastNm: statedNm * (1 - tolerance), greatestNm: statedNm * (1 + tolerance) };
}
