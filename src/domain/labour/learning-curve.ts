/**
 * The part of the reference repeat's hours that the n-th repeat takes: Crawford's unit curve, (n / reference)^(log2 rate).
 * A rate of 0.95 means five per cent less at every doubling. `repeat` and `reference` count from 1.
 *
 * Source: unit theory as in standard learning-curve tables (values in tests/published/values/labour.json).
 * Example: `learningFactor(4, 1, 0.8)` is 0.64.
 */
export function learningFactor(repeat: number, reference: number, rate: number): number {
  return (repeat / reference) ** Math.log2(rate);
}
