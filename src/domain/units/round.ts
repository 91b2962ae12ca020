/** Halves go to the even neighbour, or away from nought. */
export type Rounding = 'half-even' | 'half-up';

/** A product of decimals such as 1.005 x 100 falls a few units in the last place short of the half it stands for. */
const SLACK = 1e-9;

/**
 * Rounds to a whole number by a named rule, once, as the last step of a reckoning. A value within a thousand-millionth
 * of a half counts as that half. `roundWhole(2.5, 'half-even') = 2`, `roundWhole(-2.5, 'half-up') = -3`.
 */
export function roundWhole(value: number, rule: Rounding): number {
  const size = Math.abs(value);
  const floor = Math.floor(size);
  const rest = size - floor;
  const isHalf = Math.abs(rest - 0.5) <= SLACK * Math.max(1, size);
  const rounded = isHalf ? roundHalf(floor, rule) : Math.round(size);
  return rounded === 0 ? 0 : Math.sign(value) * rounded;
}

function roundHalf(floor: number, rule: Rounding): number {
  return rule === 'half-up' || floor % 2 === 1 ? floor + 1 : floor;
}
