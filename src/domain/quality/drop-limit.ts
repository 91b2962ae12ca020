import type { CodeBasis, UnitSystem } from '../model.ts';
import { FOOT, fromMm, type Length } from '../units/length.ts';

/**
 * Greatest length of a drop cord from the tap-off to its first tension take-up support. NEC 368.56(B)(2) prints 1.8 m (6 ft):
 * a soft pair, so the project's own unit says which of the two is meant. The IEC basis prints none: null.
 */
export function dropSupportLimit(codeBasis: CodeBasis, units: UnitSystem): { limit: Length; source: string } | null {
  if (codeBasis === 'IEC') return null;
  return { limit: units === 'ft-in' ? 6 * FOOT : fromMm(1800), source: 'NEC 368.56(B)' };
}
