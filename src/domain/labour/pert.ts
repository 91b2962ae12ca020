import type { ThreePoint } from '../model.ts';

/** Mean of a three-point estimate, (low + 4 likely + high) / 6: the same for the published method and for PERT-beta. */
export function pertMean({ low, likely, high }: ThreePoint): number {
  return (low + 4 * likely + high) / 6;
}

/**
 * Variance of the PERT-beta distribution, (mean - low)(high - mean) / 7: what the range of hours uses.
 * Source: the beta distribution with alpha + beta = 6 on [low, high].
 */
export function pertBetaVariance(estimate: ThreePoint): number {
  const mean = pertMean(estimate);
  // Where all three points agree, the mean may round to just outside them.
  return Math.max(0, (mean - estimate.low) * (estimate.high - mean)) / 7;
}

/** The published rule of thumb ((high - low) / 6)^2, kept only to reproduce the published method: 5, 8, 17 gives 4. */
export function publishedPertVariance({ low, high }: ThreePoint): number {
  return ((high - low) / 6) ** 2;
}

/** Shape of the PERT-beta: alpha = 1 + 4(m-a)/(b-a), beta = 1 + 4(b-m)/(b-a). null for a constant, low = high. */
export function pertShape({ low, likely, high }: ThreePoint): { readonly alpha: number; readonly beta: number } | null {
  if (high <= low) return null;
  return { alpha: 1 + (4 * (likely - low)) / (high - low), beta: 1 + (4 * (high - likely)) / (high - low) };
}
