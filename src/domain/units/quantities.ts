import type { UnitSystem } from '../model.ts';

// Exact by definition: the international avoirdupois pound, the foot and standard gravity (NIST SP 811, appendix B.8).
const KG_PER_LB = 0.453_592_37;
const M_PER_FT = 0.3048;
const M_PER_IN = 0.0254;
const STANDARD_GRAVITY = 9.806_65;
const N_PER_LBF = KG_PER_LB * STANDARD_GRAVITY;

/** Pounds to kilograms, exact by definition. `kgFromLb(1) = 0.45359237`. */
export const kgFromLb = (lb: number): number => lb * KG_PER_LB;
export const lbFromKg = (kg: number): number => kg / KG_PER_LB;
/** Pounds per foot to kilograms per metre. `kgPerMFromLbPerFt(1) = 1.48816...`. */
export const kgPerMFromLbPerFt = (lbPerFt: number): number => (lbPerFt * KG_PER_LB) / M_PER_FT;
export const lbPerFtFromKgPerM = (kgPerM: number): number => (kgPerM * M_PER_FT) / KG_PER_LB;
/** Pounds-force to newtons. `newtonsFromLbf(1) = 4.4482216152605`. */
export const newtonsFromLbf = (lbf: number): number => lbf * N_PER_LBF;
/** Pound-force feet to newton metres. `nmFromLbfFt(1) = 1.35581...`. */
export const nmFromLbfFt = (lbfFt: number): number => lbfFt * N_PER_LBF * M_PER_FT;
export const lbfFtFromNm = (nm: number): number => nm / (N_PER_LBF * M_PER_FT);
/** Pound-force inches to newton metres. `nmFromLbfIn(1) = 0.11298...`. */
export const nmFromLbfIn = (lbfIn: number): number => lbfIn * N_PER_LBF * M_PER_IN;
/** Ohms per 1 000 ft to ohms per km. `ohmPerKmFromOhmPerKft(1) = 3.28084`. */
export const ohmPerKmFromOhmPerKft = (ohmPerKft: number): number => ohmPerKft / M_PER_FT;

/** A weight as people read it. `formatWeight(64.4, 'ft-in') = '142.0 lb'`. */
export function formatWeight(kg: number, units: UnitSystem): string {
  return units === 'ft-in' ? `${show(lbFromKg(kg), 1)} lb` : `${show(kg, 1)} kg`;
}

/** A torque as people read it. `formatTorque(27.1, 'ft-in') = '20.0 lbf·ft'`. */
export function formatTorque(nm: number, units: UnitSystem): string {
  return units === 'ft-in' ? `${show(lbfFtFromNm(nm), 1)} lbf·ft` : `${show(nm, 1)} N·m`;
}

/** Hours to a hundredth. `formatHours(2424.04) = '2,424.04 h'`. */
export function formatHours(hours: number): string {
  return `${show(hours, 2)} h`;
}

/**
 * A counted quantity in the job's own units, to a hundredth of a foot: the takeoff counts slot closure in metres.
 * `shownQuantity({ quantity: 15.24, unit: 'm' }, 'ft-in') = { quantity: 50, unit: 'ft' }`.
 */
export function shownQuantity(
  { quantity, unit }: { readonly quantity: number; readonly unit: string },
  units: UnitSystem,
): { readonly quantity: number; readonly unit: string } {
  if (unit !== 'm' || units === 'metric') return { quantity, unit };
  return { quantity: Number((quantity / M_PER_FT).toFixed(2)), unit: 'ft' };
}

function show(value: number, digits: number): string {
  return new Intl.NumberFormat('en-US', { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
}
