import { NODE_STEP, TABLE_REACH } from './quantile-table.ts';

/** Terms of the series; those beyond add less than a ten-thousandth even where every estimate leans as far as it can. */
const TERMS = 10;
const HALVINGS = 40;

/**
 * The correlation that normal deviates need, so that the hours drawn through them vary in sum as the stated correlation
 * between activities has it: skewed hours are less correlated than the deviates behind them. `tables` hold the hours of each
 * activity at the table's nodes. 0 to 1; 1 where even hours that move together fall short of what is stated.
 *
 * Source: Hermite expansion of the covariance under a Gaussian copula (NORTA: Cario and Nelson, 1997), from memory.
 * Example: of one activity, or of hours that do not lean to either side, the stated correlation itself.
 */
export function copulaCorrelation(tables: readonly Float64Array[], stated: number): number {
  if (stated <= 0 || stated >= 1 || tables.length < 2) return stated;
  const coefficients = tables.map(hermiteCoefficients);
  const cross = Array.from({ length: TERMS }, (_, k) => {
    const own = coefficients.map((of) => of[k]!);
    const sum = own.reduce((total, one) => total + one, 0);
    return sum * sum - own.reduce((total, one) => total + one * one, 0);
  });
  const sds = coefficients.map((of) => Math.sqrt(of.reduce((sum, one) => sum + one * one, 0)));
  const sum = sds.reduce((total, sd) => total + sd, 0);
  const wanted = stated * (sum * sum - sds.reduce((total, sd) => total + sd * sd, 0));
  const covarianceAt = (rho: number) => cross.reduceRight((total, of) => (total + of) * rho, 0);
  let [low, high] = [stated, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (covarianceAt(middle) < wanted) low = middle;
    else high = middle;
  }
  return high;
}

/** Of the hours as a function of the deviate: the parts of its variance in each normalised Hermite polynomial, from the first. */
function hermiteCoefficients(table: Float64Array): readonly number[] {
  const coefficients = new Array<number>(TERMS).fill(0);
  for (let node = 0; node < table.length; node++) {
    const z = node * NODE_STEP - TABLE_REACH;
    const weight = ((table[node]! * NODE_STEP) / Math.sqrt(2 * Math.PI)) * Math.exp((-z * z) / 2);
    let [before, now] = [1, z];
    for (let k = 1; k <= TERMS; k++) {
      coefficients[k - 1] = coefficients[k - 1]! + weight * now;
      [before, now] = [now, (z * now - Math.sqrt(k) * before) / Math.sqrt(k + 1)];
    }
  }
  return coefficients;
}
